//! Which texts are typed by somebody who wants more than a text of them?

/// Markup, entities, formulas, other formats' own lines, and letters that are not seen or change what is.
pub const TEXTS: [&str; 14] = [
    "<img src=x onerror=window.ran=1>",
    "\"><script>window.ran=1</script>",
    "'><svg/onload=window.ran=1>",
    "</output></form><style>*{display:none}</style>",
    "&lt;b&gt;&amp;lt;&#60;b>",
    "{{7*7}}${7*7}\\\"]')%00%0d%0a&sw1&a=b#c;d,e",
    "=HYPERLINK(\"http://other.example\",\"x\")",
    "+1+cmd|' /C calc'!A0",
    "-2+3",
    "@SUM(1;2),\"a\";b",
    "\t=1+1",
    "\r\nBEGIN:VEVENT\r\nSUMMARY:more\r\nEND:VEVENT\r\n",
    "a\nATTENDEE:mailto:b@other.example\r\n=1,\"\r\n",
    "a\u{0}b\u{1b}c\u{7f}\u{85}\u{2028}BEGIN:VEVENT\u{2029}\u{202e}gnp\u{2066}\u{200f}\u{feff}d\u{fffd}😀\u{301}",
];

/// How a cell of a table has a text: what a spreadsheet would work out begins with an apostrophe.
pub fn cell(text: &str) -> String {
    let signed = text.strip_prefix(['+', '-']).unwrap_or_default();
    let number = !signed.is_empty() && signed.chars().all(|c| c.is_ascii_digit() || ".,".contains(c));
    let begins = ['=', '+', '-', '@', '\t', '\r', '\n', '\0', '\'', '＝', '＋', '－', '＠'];
    if text.starts_with(begins) && !number { format!("'{text}") } else { text.into() }
}
