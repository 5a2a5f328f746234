//! How does the style become small?

use anyhow::{Result, anyhow};
use lightningcss::printer::PrinterOptions;
use lightningcss::stylesheet::{MinifyOptions, ParserOptions, StyleSheet};

/// The same rules without white space, comments and detours.
pub fn small(style: &str) -> Result<String> {
    let mut sheet = StyleSheet::parse(style, ParserOptions::default()).map_err(|error| anyhow!("{error}"))?;
    sheet.minify(MinifyOptions::default())?;
    let printed = sheet.to_css(PrinterOptions { minify: true, ..PrinterOptions::default() })?;
    Ok(printed.code)
}

#[cfg(test)]
mod tests {
    use super::small;

    #[test]
    fn rules_keep_their_meaning_and_lose_the_rest() {
        let style =
            "/* Which question? */\n[hidden] { display: none !important; }\n.part {\n\tmargin: 0px 0px;\n}\n";
        assert_eq!(small(style).unwrap(), "[hidden]{display:none!important}.part{margin:0}");
    }

    #[test]
    fn what_is_no_style_is_refused() {
        assert!(small(".part { margin: 0 ").is_ok());
        assert!(small("} .part").is_err());
    }
}
