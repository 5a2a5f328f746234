//! How does a link become a QR code (ISO/IEC 18004) that can be read off paper?

use crate::text::joined;
use qrcodegen_no_heap::{QrCode, QrCodeEcc, Version};

/// The largest that is drawn: 117 modules and a quiet zone of four round them, 0.4 mm each on a print 50 mm wide.
/// Our choice: telephones read that.
const LARGEST: Version = Version::new(25);
/// Modules left white all round, as the standard asks.
const QUIET: i32 = 4;

/// How many modules the code is wide, quiet zone and all, and a path over all that are black; `None` for a text
/// that would take more than can be read off paper.
///
/// ```
/// let (width, path) = saltwright_form::export::qr::code("https://pool.example/#sw1&pool.volume=50").unwrap();
/// assert!(width == 37 && path.starts_with("M4 4h7v1h-7"));
/// assert!(saltwright_form::export::qr::code(&"x".repeat(1_000)).is_none());
/// ```
pub fn code(text: &str) -> Option<(i32, String)> {
    let mut data = [0; LARGEST.buffer_len()];
    let mut out = [0; LARGEST.buffer_len()];
    let bytes = text.as_bytes();
    data.get_mut(..bytes.len())?.copy_from_slice(bytes);
    let code = QrCode::encode_binary(
        &mut data,
        bytes.len(),
        &mut out,
        QrCodeEcc::Medium,
        Version::MIN,
        LARGEST,
        None,
        true,
    )
    .ok()?;
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let run = (x..code.size()).take_while(|x| code.get_module(*x, y)).count() as i32;
            if run > 0 {
                let (left, top, run) = ((x + QUIET).to_string(), (y + QUIET).to_string(), run.to_string());
                path.push_str(&joined(&["M", &left, " ", &top, "h", &run, "v1h-", &run]));
            }
            x += run.max(1);
        }
    }
    Some((code.size() + 2 * QUIET, path))
}
