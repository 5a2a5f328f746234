//! Does the smallest page of somebody's own work, as it stands in the README?

use crate::environment::{setting, site};
use crate::host_page;
use crate::session::visit;

/// The page as it is built, with its own script, from another address.
fn page() -> String {
    let built = std::fs::read_to_string(setting("SALTWRIGHT_SITE") + "/examples/smallest.html").unwrap();
    let form = built.split_once("<form").and_then(|(_, rest)| rest.split_once("</form>")).unwrap().0;
    host_page::page(&format!("<form{form}</form>"))
}

#[test]
fn volume_target_baseline_and_bag_give_a_staged_dose() {
    visit(&page(), &[&host_page::script()], |page| {
        page.wait("return all('[data-when=\"!ready\"]').every((element) => element.hidden)");
        page.expect(&[("basic.mass", "–"), ("stage.mass", "–"), ("index.now", "–")]);
        page.fill(&[("pool.volume", "62.82")]);
        page.press("\t\t"); // Past the unit: while it is being chosen, nothing is wrong yet.
        page.wait("return all('[data-fault=\"pool.volume\"]')[0].innerText === 'Choose the unit.'");
        page.fill(&[("pool.volume.unit", "m3"), ("salt.now", "400")]);
        page.expect(&[("basic.mass", "177 kg"), ("stage.mass", "120 kg"), ("stage.bags", "6")]);
        assert!(page.holds("return seen(all('[data-caution]')[0])"), "no salt before the water is looked at");
        page.click("[name='salt.target']");
        page.press("x\t");
        page.wait("return all('[data-fault=\"salt.target\"]')[0].innerText.includes('x')");
        page.expect(&[("stage.mass", "–")]);
    });
}

#[test]
fn too_much_salt_gives_a_share_to_replace_and_five_tests_an_index() {
    visit(&page(), &[&host_page::script()], |page| {
        page.wait("return all('[data-when=\"!ready\"]').every((element) => element.hidden)");
        page.fill(&[("pool.volume", "50"), ("pool.volume.unit", "m3"), ("salt.now", "6300")]);
        // By plain proportion (6,300 − 3,200) / (6,300 − 100) of the water, 50.0 %; the reading's doubt takes a little off.
        page.expect(&[("replace.share", "49.8 %"), ("replace.volume", "24.91 m³")]);
        page.fill(&[("water.ph", "7.5"), ("water.ta", "100"), ("water.ch", "250"), ("water.cya", "30")]);
        page.expect(&[("index.now", "–")]);
        page.fill(&[("water.temperature", "26")]);
        page.wait("return /^[+−]\\d\\.\\d\\d$/.test(all('output[name=\"index.now\"]')[0].textContent)");
    });
}

/// What the author's own script finds is told in a box; the same pages as in `tests/check` are judged natively.
#[test]
fn the_script_for_authors_tells_in_a_box_what_is_wrong() {
    let script = format!("{}saltwright-check.js", site());
    let told = |form: &str, act: fn(&str)| {
        let policy = "default-src 'none'; img-src data:; script-src 'nonce-host'; require-trusted-types-for 'script'; \
                      trusted-types 'none'";
        let html = format!(
            "<!DOCTYPE html><meta charset=utf-8><link rel=icon href='data:,'><title>Host</title>{form}
            <script type=module nonce=host src='{script}' crossorigin></script>
            <script type=module nonce=host>document.body.dataset.checked = ''</script>"
        );
        visit(&host_page::host(policy, |_| html).1, &[&script], |page| {
            page.wait("return 'checked' in document.body.dataset");
            act(&page.text("return document.querySelector('pre[data-mismatch]')?.textContent ?? ''"));
        });
    };
    told(
        "<form data-saltwright=1><input name=salt.nwo><template><output name=stage.mass></output></template></form>",
        |told| {
            assert_eq!(told.lines().count(), 2, "{told}");
            assert!(
                told.starts_with("? <input name=\"salt.nwo\">: ") && told.contains("did you mean salt.now?"),
                "{told}"
            );
        },
    );
    told("<form data-saltwright=1><input name=school></form>", |told| assert_eq!(told, ""));
}
