//! Does the sheet hold still and fit?

use crate::engine::Need;
use crate::environment::site;
use crate::fixtures;
use crate::session::visit;

#[test]
fn too_much_salt_is_told_in_passes_behind_the_cautions() {
    visit(&site(), &[], |page| {
        page.open_example(fixtures::TOO_MUCH);
        page.expect(fixtures::TOO_MUCH_ANSWER);
        assert!(page.says("standing.over") && page.says("add.no"));
        let passes = "const cell = (row, name) => row.querySelector(`output[name=${name}]`).textContent;
            return all('#less tbody tr').map((row) =>
                ['pass', 'share', 'volume', 'level'].map((name) => cell(row, name)).join('|')).join('\\n')";
        assert_eq!(page.text(passes), fixtures::TOO_MUCH_PASSES);
        let order =
            "const [cautions, amounts] = [all('#less li').filter(seen), all('#less output').filter(seen)];
            const before = (a, b) => a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING;
            return cautions.length > 3 && amounts.length > 3
                && cautions.every((li) => amounts.every((amount) => before(li, amount)))";
        assert!(page.holds(order), "an amount stands before a caution");
        // The share of one great drain is for the working alone; the strip gives no amount at all.
        let working =
            "return all('output[name=\"replace.share\"]').every((o) => o.closest('details') && !seen(o))";
        assert!(page.holds(working), "the share at once stands outside the working");
        page.resize(360, 740);
        let strip = "return all('.summary-bar').some(seen) && !all('.summary-bar output').some(seen)
            && all('.summary-bar [data-when=\"standing.over\"]').some(seen)";
        assert!(page.holds(strip), "the strip");
    });
}

#[test]
fn what_goes_in_before_the_salt_is_told_in_its_order() {
    visit(&site(), &[], |page| {
        page.open(&site());
        page.click(&format!("summary:has(+ * {})", fixtures::BALANCE_FIRST));
        page.click(fixtures::BALANCE_FIRST);
        assert!(page.says("add.wait"));
        // One name a step, and the cautions before any amount.
        let steps = "return all('#treat ol > li').map((li) => [
            ...[...li.querySelectorAll('b > span')].filter(seen).map((e) => e.textContent),
            ...['whole', 'then-ph', 'then-index'].map((n) => li.querySelector(`output[name=${n}]`).textContent),
        ].join('|')).join('\\n')";
        assert_eq!(page.text(steps), fixtures::BALANCE_STEPS);
        assert!(page.holds(
            "const heed = all('#treat .caution').find(seen), first = all('#treat li output').find(seen);
            return !!(heed.compareDocumentPosition(first) & Node.DOCUMENT_POSITION_FOLLOWING)"
        ));
        page.click(fixtures::WATER_FIRST);
        assert!(page.says("add.wait") && page.says("treat.water-first"));
        page.expect(fixtures::WATER_FIRST_ANSWER);
        assert!(page.holds("return !all('#treat ol').some(seen)"), "steps for a water that is to go");
    });
}

#[test]
fn a_source_is_two_steps_away() {
    visit(&site(), &[], |page| {
        page.open(&format!("{}#{}", site(), fixtures::link(fixtures::US)));
        page.unfold("*");
        let links = page.ask("return all('#sheet a[href^=\"#src-\"]').map((a) => a.hash)");
        assert!(links.as_array().unwrap().len() > 8, "{links}");
        assert!(page.holds(
            "return all('a[href^=\"#src-\"]').every((a) => document.querySelector('#why ' + a.hash)?.textContent)"
        ));
    });
}

#[test]
fn nothing_is_wider_than_the_screen() {
    visit(&site(), &[], |page| {
        let open = "all('details').forEach((d) => d.open = true)";
        let wide = "return all('body, body *').filter(seen)
            .filter((e) => e.getBoundingClientRect().right > innerWidth + 0.5 || document.documentElement.scrollWidth > innerWidth && e.scrollWidth > innerWidth)
            .map((e) => e.outerHTML.slice(0, 80)).join('\\n')";
        let fits = |what: &str| {
            for width in [320, 360, 768, 1366] {
                page.resize(width, 740);
                let over = page.ask(
                    "return document.documentElement.scrollWidth - document.documentElement.clientWidth",
                );
                assert_eq!(over, 0, "{what}, at {width} px, because of {}", page.text(wide));
            }
        };
        fits("blank");
        page.ask(open);
        fits("blank, unfolded");
        page.open(&format!("{}#{}", site(), fixtures::link(fixtures::US)));
        page.ask(open);
        fits("with the demo");
        // A phone shows one part at a time; on the second day the sheet has its widest table.
        page.click(fixtures::SECOND_DAY);
        page.ask(open);
        for part in ["sheet", "days", "running", "keep", "ready"] {
            page.ask(&format!("field('at').find((e) => e.value === '{part}').click()"));
            fits(part);
        }
        for example in [fixtures::TOO_MUCH, fixtures::BALANCE_FIRST, fixtures::WATER_FIRST] {
            page.click(example);
            page.ask(open);
            fits(example);
        }
    });
}

/// Shifts since the page was opened, whether or not a key had just been pressed.
const WATCH: &str = "
    window.shifts = [];
    new PerformanceObserver((list) => shifts.push(...list.getEntries()))
        .observe({ type: 'layout-shift', buffered: true });";

/// What was moved, once the last key's effect is on the screen. What only grew in its place was not.
fn moved(of: &str) -> String {
    format!(
        "const element = ({{ node }}) => node?.nodeType === 1 ? node : node?.parentElement;
        const name = (e) => e.outerHTML.slice(0, 60).replace(/\\s+/g, ' ');
        const by = (s) => ['x', 'y'].map((way) => Math.round(s.currentRect[way] - s.previousRect[way]));
        const told = (shift) => shift.sources
            .filter((s) => element(s)?.matches({of:?}) && by(s).some((pixels) => pixels !== 0))
            .map((s) => `${{name(element(s))}} by ${{by(s)}}`).join('; ');
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
        return shifts.map(told).filter((told) => told).join('\\n')"
    )
}

fn nothing_moves(of: &str, screens: &[(u32, u32)]) {
    let mut all = String::new();
    for &(width, height) in screens {
        visit(&site(), &[], |page| {
            if !page.can(Need::Shifts, "all of it") {
                return;
            }
            page.resize(width, height);
            page.open(&site());
            page.ask(WATCH);
            page.fill(fixtures::US);
            page.press("\t");
            for shift in page.text(&moved(of)).lines() {
                all += &format!("at {width} px {shift}\n");
            }
        });
    }
    assert!(all.is_empty(), "moved while the demo was typed:\n{all}");
}

#[test]
fn nothing_moves_under_the_hands() {
    nothing_moves(":not(#sheet, #sheet *, #views, #views *)", &[(360, 740), (768, 1024), (1366, 768)]);
}

/// From now on, wherever the word of the verdict is drawn, and after which key.
const TRAIL: &str = "
    const trail = window.trail = [];
    const look = () => {
        const word = all('.verdict .verdict-word').find(seen)?.getBoundingClientRect();
        const place = word && ['left', 'top', 'bottom'].map((edge) => `${edge} ${word[edge].toFixed(1)}`).join();
        const { name, value } = document.activeElement;
        if (place !== trail.at(-1)?.place) trail.push({ place, after: `${name} ${value}` });
        requestAnimationFrame(look);
    };
    look();";

const BAGS: &str = "const bags = all('output[name=\"buy.bags\"]').find(seen).getBoundingClientRect();
    return ['right', 'top', 'bottom'].map((edge) => `${edge} ${bags[edge].toFixed(1)}`).join()";

/// Where the sheet stands beside the questions, the eye goes back to two things on it: the word, at
/// every key, and the bags, at every answer. What is below them may grow.
#[test]
fn verdict_and_bags_keep_their_place() {
    for (width, height, bags_too) in [(992, 700, false), (1366, 768, true), (1920, 1080, true)] {
        visit(&site(), &[], |page| {
            page.resize(width, height);
            page.open(&site());
            page.ask(TRAIL);
            let bags = page.text(BAGS);
            for row in fixtures::US {
                page.fill(&[*row]);
                if bags_too {
                    assert_eq!(page.text(BAGS), bags, "the bags to buy, after {row:?}, at {width} px");
                }
            }
            page.press("\t");
            let trail = page.ask(
                "await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
                return trail",
            );
            let drawn = trail.as_array().unwrap();
            assert!(drawn.len() == 1 && drawn[0]["place"].is_string(), "the word, at {width} px: {trail:#}");
        });
    }
}
