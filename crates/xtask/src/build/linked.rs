//! What is linked into the wasm, and what does it take? Nothing that nobody uses.

use anyhow::{Result, ensure};
use std::cmp::Reverse;
use walrus::{ConstExpr, ElementItems, Function, Module, RefType, passes::gc};

/// Parts of the library that one careless line brings along, each some KB, and we do without (DEVELOPERS.md says how).
/// A hash table is there: what carries an answer to a script keeps the keys that have crossed in one.
const UNWANTED: [&str; 7] =
    ["fmt::float", "flt2dec", "dec2flt", "StrSearcher", "slice::sort", "core::unicode", "dlmalloc"];

/// The ten functions that take the most bytes, the largest first, of a module that still has its names.
pub fn largest(wasm: &[u8]) -> Result<Vec<(String, usize)>> {
    let mut all: Vec<_> = functions(&Module::from_buffer(wasm)?).collect();
    all.sort_by_key(|(_, bytes)| Reverse(*bytes));
    all.truncate(10);
    Ok(all)
}

/// The module with only those exports that the loader calls for, and what these need; the tool adds more.
pub fn used(loader: &str, wasm: &[u8]) -> Result<Vec<u8>> {
    let mut module = Module::from_buffer(wasm)?;
    let idle = |name: &str| !loader.contains(&format!("wasm.{name}"));
    let idle: Vec<_> = module.exports.iter().filter(|e| idle(&e.name)).map(|e| e.id()).collect();
    idle.into_iter().for_each(|id| module.exports.delete(id));
    empty_places(&mut module);
    gc::run(&mut module);
    for (name, _) in functions(&module) {
        let unwanted = UNWANTED.iter().find(|part| name.contains(**part));
        ensure!(unwanted.is_none(), "{name} is linked; what brings it along?");
    }
    Ok(module.emit_wasm())
}

/// Empties the places in the table of functions by which the tool told closures apart, of the library's every method
/// that takes one: it calls them by exports of its own.
fn empty_places(module: &mut Module) {
    let is_told = |function: &Function| named(function).contains("closures::_::invoke");
    for element in module.elements.iter_mut() {
        let ElementItems::Functions(held) = &element.items else { continue };
        let places = held.iter().map(|id| match is_told(module.funcs.get(*id)) {
            true => ConstExpr::RefNull(RefType::FUNCREF),
            false => ConstExpr::RefFunc(*id),
        });
        element.items = ElementItems::Expressions(RefType::FUNCREF, places.collect());
    }
}

fn functions(module: &Module) -> impl Iterator<Item = (String, usize)> {
    module.funcs.iter_local().map(|(id, function)| {
        let bytes = function.original_range.as_ref().map_or(0, ExactSizeIterator::len);
        (named(module.funcs.get(id)), bytes)
    })
}

/// Its name, without the marks by which the compiler tells copies and crates apart.
fn named(function: &Function) -> String {
    let is_mark = |text: &str| text.len() == 16 && text.chars().all(|c| c.is_ascii_hexdigit());
    let name = function.name.as_deref().unwrap_or("one without a name");
    let name = name.rsplit_once("::h").filter(|(_, mark)| is_mark(mark)).map_or(name, |(name, _)| name);
    let parts = name.split_inclusive(['[', ']']);
    let kept = parts.filter(|part| !is_mark(part.trim_end_matches(']')));
    kept.collect::<String>().replace("[::", "::")
}

#[cfg(test)]
mod tests {
    use super::*;
    use walrus::ir::Value;
    use walrus::{ElementKind, FunctionBuilder, FunctionId};

    /// A module that exports `answer`, which is large and called as given, and `attach`.
    fn module(name: &str) -> Vec<u8> {
        let mut module = Module::default();
        for (export, name, constants) in [("attach", "wasm::attach", 2), ("answer", name, 10)] {
            let id = function(&mut module, constants);
            module.funcs.get_mut(id).name = Some(name.to_string());
            module.exports.add(export, id);
        }
        module.emit_wasm()
    }

    fn function(module: &mut Module, constants: i32) -> FunctionId {
        let mut builder = FunctionBuilder::new(&mut module.types, &[], &[]);
        for n in 0..constants {
            builder.func_body().i32_const(n).drop();
        }
        builder.finish(vec![], &mut module.funcs)
    }

    #[test]
    fn the_largest_comes_first_and_without_marks() {
        let wasm = module("<core[c5930c85a12de822]::fmt::Formatter>::pad::h0123456789abcdef");
        let found = largest(&wasm).unwrap();
        let names: Vec<_> = found.iter().map(|(name, _)| name.as_str()).collect();
        assert_eq!(names, ["<core::fmt::Formatter>::pad", "wasm::attach"]);
        assert!(found[0].1 > found[1].1 && found[1].1 > 6, "{found:?}");
    }

    #[test]
    fn what_nobody_uses_goes_and_what_lies_behind_it() {
        let names = |loader| {
            let left = largest(&used(loader, &module("plan::plan")).unwrap()).unwrap();
            left.into_iter().map(|(name, _)| name).collect::<Vec<_>>()
        };
        assert_eq!(names("wasm.answer(1); wasm.attach(2);"), ["plan::plan", "wasm::attach"]);
        assert_eq!(names("wasm.attach(2);"), ["wasm::attach"]);
    }

    #[test]
    fn a_place_in_the_table_keeps_only_what_is_called_by_it() {
        let mut module = Module::from_buffer(&module("plan::plan")).unwrap();
        let mut held = Vec::new();
        for name in ["core::fmt::write", "wasm_bindgen::convert::closures::_::invoke"] {
            let id = function(&mut module, 3);
            module.funcs.get_mut(id).name = Some(name.to_string());
            held.push(id);
        }
        let table = module.tables.add_local(false, 2, Some(2), RefType::FUNCREF);
        let kind = ElementKind::Active { table, offset: ConstExpr::Value(Value::I32(0)) };
        let element = module.elements.add(kind, ElementItems::Functions(held));
        module.tables.get_mut(table).elem_segments.insert(element);
        module.exports.add("table", table);
        let left = largest(&used("wasm.table wasm.answer(1)", &module.emit_wasm()).unwrap()).unwrap();
        assert_eq!(
            left.into_iter().map(|(name, _)| name).collect::<Vec<_>>(),
            ["plan::plan", "core::fmt::write"]
        );
    }

    #[test]
    fn what_we_do_without_is_refused_by_its_name() {
        for part in UNWANTED {
            let wasm = module(&format!("core[c5930c85a12de822]::{part}::of"));
            assert!(used("wasm.answer(1)", &wasm).unwrap_err().to_string().contains(part));
            assert!(used("wasm.attach(2)", &wasm).is_ok());
        }
    }
}
