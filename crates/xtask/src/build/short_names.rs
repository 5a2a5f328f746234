//! What are the things called that loader and wasm hand each other? As little as can be.
//!
//! The tool names each by what it is and a hash of sixteen digits, in both files; no packing gets rid
//! of a hash. Nobody reads these names, so both files get short ones.

use anyhow::{Result, ensure};
use walrus::ModuleConfig;

/// Loader and wasm with `$0`, `$1` … for every name between them that the tool made up, and none for what lies within.
pub fn short(loader: &str, wasm: &[u8]) -> Result<(String, Vec<u8>)> {
    let mut module = ModuleConfig::new().generate_name_section(false).parse(wasm)?;
    let mut text = loader.to_string();
    let mut count = 0;
    let mut rename = |name: &mut String| {
        if !name.starts_with("__wb") && !name.starts_with("wasm_bindgen__") {
            return;
        }
        let short = format!("${count}");
        text = replaced(&text, name, &short);
        *name = short;
        count += 1;
    };
    module.imports.iter_mut().for_each(|import| rename(&mut import.name));
    module.exports.iter_mut().for_each(|export| rename(&mut export.name));
    let taken = loader.split('$').skip(1).any(|rest| rest.starts_with(|c: char| c.is_ascii_digit()));
    ensure!(!taken, "the loader itself uses names like $0");
    Ok((text, module.emit_wasm()))
}

/// `text` with `short` for `name` wherever it stands as a whole word.
fn replaced(text: &str, name: &str, short: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(name) {
        let (before, after) = (&rest[..at], &rest[at + name.len()..]);
        let inside = |c: char| c.is_ascii_alphanumeric() || c == '_';
        let whole = !before.ends_with(inside) && !after.starts_with(inside);
        out.push_str(before);
        out.push_str(if whole { short } else { name });
        rest = after;
    }
    out + rest
}

#[cfg(test)]
mod tests {
    use super::*;
    use walrus::Module;

    #[test]
    fn only_whole_words_are_replaced() {
        assert_eq!(replaced("a.b_1(b_1, b_12, ab_1)", "b_1", "$0"), "a.$0($0, b_12, ab_1)");
    }

    #[test]
    fn both_files_get_the_same_names() {
        let mut module = Module::default();
        let kind = module.types.add(&[], &[]);
        module.add_import_func("./loader_bg.js", "__wbg_print_0123456789abcdef", kind);
        let loader = "const imports = { __wbg_print_0123456789abcdef: function() {} };";
        let (text, wasm) = short(loader, &module.emit_wasm()).unwrap();
        assert_eq!(text, "const imports = { $0: function() {} };");
        let module = Module::from_buffer(&wasm).unwrap();
        assert!(module.imports.iter().all(|import| import.name == "$0"));
    }
}
