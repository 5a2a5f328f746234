//! Is one part at a time shown on a telephone, and is every part found?

use crate::environment::site;
use crate::fixtures;
use crate::session::{Session, visit};

/// The parts that are seen.
fn parts(page: &Session) -> String {
    page.text("return [...new Set(all('[data-part]').filter((e) => e.checkVisibility()).map((e) => e.dataset.part))].join()")
}

#[test]
fn an_owner_walks_through_the_parts() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
        let every = page.text("return [...new Set(all('[data-part]').map((e) => e.dataset.part))].join()");
        assert_eq!(parts(page), every, "on a desk all of them");
        page.resize(360, 740);
        let order = page.text("return field('at').map((e) => e.value).join()");
        let sorted = |list: &str| {
            let mut all: Vec<_> = list.split(',').map(String::from).collect();
            all.sort();
            all
        };
        assert_eq!(sorted(&order), sorted(&every), "each part can be chosen, and nothing else");

        for part in order.split(',') {
            assert_eq!(parts(page), part);
            page.tap("[data-act=next]");
        }
        page.tap("[data-act=back]");
        assert_eq!(Some(parts(page).as_str()), order.split(',').rev().nth(1));

        // A link finds its goal whatever part that is in.
        page.click(".summary-bar a");
        assert_eq!(parts(page), "sheet");
        page.ask("all('#sheet a[href=\"#days\"]').find(seen).click()");
        assert_eq!(parts(page), "days");

        // A counter on a telephone has all of it at once.
        page.ask("field('at')[0].click(); field('view').find((e) => e.value === 'counter').click()");
        assert_eq!(parts(page), every);
        page.expect(fixtures::US_ANSWER);
    });
}

#[test]
fn each_view_unfolds_what_it_is_for() {
    visit(&format!("{}#{}", site(), fixtures::link(fixtures::US)), &[], |page| {
        let wrong = |view: &str| {
            page.text(&format!(
                "field('view').find((e) => e.value === '{view}').click();
                return all('details[data-open]').filter((e) => e.open !== e.dataset.open.split(' ').includes('{view}'))
                    .map((e) => e.outerHTML.slice(0, 60)).join('\\n')"
            ))
        };
        for view in ["class", "counter", "owner", "class"] {
            assert_eq!(wrong(view), "", "{view}");
            page.expect(fixtures::US_ANSWER);
        }
        assert!(page.holds("return all('#sheet details .sum').some(seen)"), "a class sees the working");
    });
}
