//! Is the policy in the page exactly what is meant, and does the browser hold to it?

use crate::engine::Need;
use crate::figures;
use crate::records::FILES;
use crate::seat::{Seat, setting, site};
use std::collections::BTreeSet;
use std::fs;
use std::io::Read;
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};

/// The pages that carry style and script inside, and whether a worker keeps them.
const PAGES: [(&str, bool); 7] = [
    ("index.html", true),
    ("index.fr.html", true),
    ("index.es.html", true),
    ("first-salt.html", false),
    ("first-salt.fr.html", false),
    ("first-salt.es.html", false),
    ("examples/own.html", false),
];

/// What turns text into elements or into a script, and what asks for one.
const NEVER: [&str; 18] = [
    "innerHTML",
    "outerHTML",
    "insertAdjacentHTML",
    "inner_html",
    "outer_html",
    "adjacent_html",
    "setHTML",
    "createContextualFragment",
    "DOMParser",
    "parseFromString",
    "srcdoc",
    "document.write",
    "execCommand",
    "eval(",
    "new Function",
    "import(",
    "importScripts",
    "javascript:",
];

fn built(name: &str) -> String {
    let path = Path::new(&setting("SALTWRIGHT_SITE")).join(name);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// A page without what stands in its script and its style.
fn words(page: &str) -> String {
    let (start, rest) = page.split_once("<style>").expect("a style");
    let (style, rest) = rest.split_once("</style>").expect("its end");
    let (body, rest) = rest.split_once("<script type=\"module\">").expect("a script");
    let (script, end) = rest.split_once("</script>").expect("its end");
    assert!(!style.is_empty() && !script.is_empty());
    format!("{start}<style></style>{body}<script type=\"module\"></script>{end}")
}

/// The names and texts of a page's attributes.
fn attributes(words: &str) -> Vec<(&str, &str)> {
    let mut found = Vec::new();
    for tag in words.split('<').filter(|tag| tag.starts_with(|c: char| c.is_ascii_alphabetic())) {
        let mut rest = tag.find([' ', '>']).map_or("", |end| &tag[end..]);
        // Up to the end of the tag: every text of an attribute stands between quotation marks.
        while let Some(at) = rest.find(['=', '>']).filter(|at| rest.as_bytes()[*at] == b'=') {
            let name = rest[..at].rsplit(' ').next().unwrap_or_default();
            let text =
                rest[at + 1..].strip_prefix('"').unwrap_or_else(|| panic!("no mark after {name} in <{tag}"));
            let (text, behind) = text.split_once('"').expect("a second mark");
            found.push((name, text));
            rest = behind;
        }
    }
    found
}

#[test]
fn the_policy_is_exactly_what_is_meant_and_nothing_in_a_page_needs_more() {
    for (name, kept) in PAGES {
        let page = built(name);
        let words = words(&page);
        let head =
            "<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"";
        let (_, rest) = words.split_once(head).unwrap_or_else(|| panic!("{name}: no policy in front"));
        let hidden = rest.split('"').next().unwrap().split('\'').map(|part| match part.split_once('-') {
            Some(("sha256", hash)) if hash.len() == 44 => "sha256",
            _ => part,
        });
        let kept = if kept {
            "worker-src 'self'; manifest-src 'self'; trusted-types saltwright"
        } else {
            "trusted-types 'none'"
        };
        assert_eq!(
            hidden.collect::<Vec<_>>().join("'"),
            format!(
                "default-src 'none'; script-src 'sha256' 'wasm-unsafe-eval'; style-src 'sha256'; img-src data:; {kept}; \
                 require-trusted-types-for 'script'; base-uri 'none'; form-action 'none'"
            ),
            "{name}"
        );
        let count = |tag: &str| words.matches(tag).count();
        assert_eq!([count("<script"), count("<style"), count("http-equiv")], [1, 1, 1], "{name}");
        let attributes = attributes(&words);
        assert!(attributes.len() > 50, "{name}: {attributes:?}");
        for (attribute, text) in attributes {
            let bad = attribute.starts_with("on") || matches!(attribute, "style" | "srcdoc" | "nonce");
            let runs = text.trim().to_ascii_lowercase().starts_with("javascript:");
            assert!(!bad && !runs, "{name}: {attribute}=\"{text}\"");
        }
    }
}

#[test]
fn nothing_of_ours_makes_elements_or_scripts_of_text() {
    let crates = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../crates");
    let mut texts: Vec<_> =
        ["saltwright.js", "offline.js"].map(|name| (name.to_string(), built(name))).into();
    texts.extend(PAGES.map(|(name, _)| (name.to_string(), built(name))));
    let mut folders = vec![crates.join("form/src"), crates.join("web/src")];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else {
                texts.push((path.display().to_string(), fs::read_to_string(&path).expect("a text")));
            }
        }
    }
    assert!(texts.len() > 40, "{}", texts.len());
    for (name, text) in &texts {
        for word in NEVER {
            assert!(!text.contains(word), "{name} has {word:?}");
        }
    }
}

/// What somebody might try who got a word into the page: `[what, by which part of the policy it is refused]`.
/// Each is awaited; what throws is refused at once.
const TRIES: &str = r##"
const seen = [], ended = [];
addEventListener("securitypolicyviolation", (e) => seen.push(`${e.effectiveDirective} ${e.blockedURI}`));
const put = (tag, more) => document.body.appendChild(Object.assign(document.createElement(tag), more));
const rest = () => new Promise((done) => setTimeout(done, 50));
const tries = {
  html: () => { document.createElement("p").innerHTML = "<b>a</b>"; },
  "more html": () => document.body.insertAdjacentHTML("beforeend", "<b class=put>a</b>"),
  "parsed html": () => new DOMParser().parseFromString("<b>a</b>", "text/html"),
  "framed html": () => put("iframe", { srcdoc: "<b>a</b>" }),
  script: () => { const one = document.createElement("script"); one.append("window.ran = 'script'"); document.body.append(one); },
  "script from afar": () => put("script", { src: AFAR + "script.js" }),
  "own script": () => put("script", { src: NEAR + "script.js" }),
  handler: () => { const one = put("button"); one.setAttribute("onclick", "window.ran = 'handler'"); one.click(); },
  address: () => put("a", { href: "javascript:void(window.ran = 'address')" }).click(),
  text: () => { window.ran = window.eval("'text'"); },
  function: () => { window.ran = window.Function("return 'function'")(); },
  later: () => setTimeout("window.ran = 'later'"),
  style: () => { put("p", { id: "styled" }).setAttribute("style", "z-index: 7"); },
  sheet: () => { const one = document.createElement("style"); one.append("#styled { z-index: 7 }"); document.body.append(one); },
  "sheet from afar": () => put("link", { rel: "stylesheet", href: AFAR + "sheet.css" }),
  fetch: () => fetch(AFAR + "fetch"),
  "own fetch": () => fetch(NEAR + "fetch"),
  beacon: () => { if (!navigator.sendBeacon(AFAR + "beacon", "a")) throw new Error("no"); },
  image: () => put("img", { src: AFAR + "image.png" }),
  "own image": () => put("img", { src: NEAR + "image.png" }),
  frame: () => put("iframe", { src: AFAR + "frame.html" }),
  object: () => put("object", { data: AFAR + "object" }),
  worker: () => new Worker(URL.createObjectURL(new Blob(["1"]))),
  base: () => document.head.appendChild(Object.assign(document.createElement("base"), { href: AFAR })),
  form: () => put("form", { action: AFAR + "form", method: "post" }).submit(),
  voucher: () => { window.trustedTypes.createPolicy("another", { createHTML: String }); window.ran = "voucher"; },
};
for (const [what, act] of Object.entries(tries)) {
  const before = seen.length;
  let threw = false;
  try { await act(); } catch { threw = true; }
  for (let n = 0; n < 40 && seen.length === before; n++) await rest();
  ended.push([what, threw, seen.slice(before).join()]);
}
await rest();
return { ended, ran: window.ran ?? null, put: all(".put").length,
  styled: getComputedStyle(all("#styled")[0]).zIndex, base: document.baseURI.startsWith(AFAR) };
"##;

#[test]
fn the_browser_refuses_what_the_page_does_not_do_itself() {
    let afar = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
    afar.set_nonblocking(true).unwrap();
    let far = format!("http://{}/", afar.local_addr().unwrap());
    let disk = format!("file://{}/index.html", setting("SALTWRIGHT_SITE"));
    let seat = Seat::start();
    for address in PAGES.map(|(name, _)| site() + name).into_iter().chain([disk]) {
        seat.open(&address);
        // What is beside a page on the disk, not every browser tells of.
        let apart = address.starts_with("file:") && !seat.can(Need::FileWatch, "an own address on the disk");
        let near = if apart { &far } else { &address[..=address.rfind('/').unwrap()] };
        let tries = format!("const AFAR = {far:?}, NEAR = {near:?};\n{TRIES}");
        let told = seat.ask(&tries);
        for ended in told["ended"].as_array().unwrap() {
            assert_ne!(ended[2], "", "{address}: {} went unnoticed, {told:#}", ended[0]);
        }
        let threw =
            |what: &str| told["ended"].as_array().unwrap().iter().any(|e| e[0] == what && e[1] == true);
        for what in [
            "html",
            "more html",
            "parsed html",
            "framed html",
            "text",
            "function",
            "voucher",
            "fetch",
            "own fetch",
        ] {
            assert!(threw(what), "{address}: {what}: {told:#}");
        }
        assert_eq!(told["ran"], serde_json::Value::Null, "{address}");
        assert_eq!(told["put"], 0, "{address}");
        assert_eq!(told["styled"], "auto", "{address}");
        assert_eq!(told["base"], false, "{address}");
        // And the page goes on as before.
        assert!(seat.holds("return all('[data-when=\"!ready\"]').every((e) => e.hidden)"));
    }
    // A browser may knock beforehand; once it is gone, what it said there is whole, and is nothing.
    drop(seat);
    while let Ok((mut stream, _)) = afar.accept() {
        let mut said = Vec::new();
        stream.set_nonblocking(false).unwrap();
        stream.read_to_end(&mut said).unwrap();
        assert_eq!(String::from_utf8_lossy(&said), "", "somebody was asked");
    }
}

/// A whole job, from the first figure to the last paper: the page is asked for when it is opened, and then no more.
#[test]
fn a_whole_job_asks_for_nothing() {
    let seat = Seat::start();
    seat.open(&site());
    seat.wait(
        "return !!navigator.serviceWorker.controller && !!(await caches.match(new URL('./', location)))",
    );
    assert_eq!(seat.asked(), [site()].into());
    seat.fill(figures::US);
    seat.fill(&[("job.name", "Quillane")]);
    for sheet in ["slip", "days", "record", "class", "answers"] {
        seat.choose_paper(sheet);
        if seat.can(Need::Pdf, "what a print asks for") {
            assert!(seat.print(21.0, 29.7).starts_with(b"%PDF-"));
        }
    }
    for act in ["calendar", "csv", "save"] {
        seat.ask(&format!("{FILES} all('[data-act={act}]')[0].click()"));
        seat.wait("return files.length === 1");
    }
    seat.ask("all('[data-act=link]')[0].click(); all('[data-act=new]')[0].click(); all('[data-act=undo]')[0].click()");
    seat.expect(figures::US_ANSWER);
    assert_eq!(seat.asked(), BTreeSet::new(), "a job asked for something");
    // The worker asks the page's own address for an edition, and nobody else.
    seat.reload();
    seat.expect(figures::US_ANSWER);
    assert_eq!(seat.asked(), [site()].into());
}
