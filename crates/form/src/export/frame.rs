//! Which text puts the page into another one?

use crate::text::joined;

/// The frame of this title and address, for an author to paste.
///
/// ```
/// let frame = saltwright_form::export::frame::frame("\"Salt\" & more", "https://pool.example/#sw1&a=b");
/// assert!(frame.starts_with("<iframe title=\"&quot;Salt&quot; &amp; more\" src=\"https://pool.example/#sw1&amp;a=b\""));
/// ```
pub fn frame(title: &str, address: &str) -> String {
    joined(&[
        "<iframe title=\"",
        &in_attribute(title),
        "\" src=\"",
        &in_attribute(address),
        "\" width=\"100%\" height=\"640\" loading=\"lazy\" sandbox=\"allow-scripts allow-forms allow-downloads \
         allow-modals allow-popups\"></iframe>",
    ])
}

/// A text as HTML has it between quotation marks.
fn in_attribute(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '"' => out.push_str("&quot;"),
            c => out.push(c),
        }
    }
    out
}
