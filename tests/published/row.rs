//! What is read of a row of a file, and how far is what we find from it?

use chem::pool_shape::{Floor, Ledge, Measures, Outline, Pool, Steps};
use chem::treatment::Chemical;
use chem::*;
use evidence::quantities::{celsius, m3, ph, ppm};

/// A line of a file, its cells found by the name in the header.
pub struct Row<'a> {
    pub head: &'a [&'a str],
    pub cells: Vec<&'a str>,
}

impl<'a> Row<'a> {
    pub fn text(&self, name: &str) -> &'a str {
        let at = self.head.iter().position(|h| *h == name);
        self.cells[at.unwrap_or_else(|| panic!("no column {name}"))]
    }

    pub fn number(&self, name: &str) -> f64 {
        let text = self.text(name);
        text.parse().unwrap_or_else(|_| panic!("{name} is {text:?}, not a number"))
    }

    /// The water of the columns that begin with `prefix`; an absent column counts as none.
    pub fn sample(&self, prefix: &str, salt: Option<f64>) -> Sample {
        let x = |name: &str| {
            let name = format!("{prefix}{name}");
            if self.head.contains(&name.as_str()) { self.number(&name) } else { 0.0 }
        };
        Sample {
            temperature: celsius(x("t_c")),
            ph: ph(x("ph")),
            alkalinity: Alkalinity::from_mg_per_l(x("ta_mgl_caco3")).unwrap(),
            hardness: Hardness::from_mg_per_l(x("ch_mgl_caco3")).unwrap(),
            cyanuric_acid: CyanuricAcid::from_mg_per_l(x("cya_mgl")).unwrap(),
            salt: ppm(salt.unwrap_or_else(|| x("nacl_mgl"))),
            boron: Boron::from_mg_per_l(x("b_mgl")).unwrap(),
            magnesium: Magnesium::from_mg_per_l(x("mg_mgl_caco3")).unwrap(),
            sulfate: Sulfate::from_mg_per_l(x("so4_mgl")).unwrap(),
        }
    }
}

pub fn index(state: Result<State, WaterError>) -> f64 {
    state.unwrap().index.unwrap().log10()
}

/// The rows below that end in "printed" are held to half of the last digit of the source.
pub const PRINTED: f64 = 0.5;

/// What a check found in one row.
pub struct Found {
    pub column: String,
    pub ours: f64,
    pub theirs: f64,
    /// Size of one unit of the tolerance: 1, or the last printed digit.
    pub scale: f64,
}

pub fn plainly(row: &Row, column: &str, ours: f64) -> Found {
    Found { column: column.into(), ours, theirs: row.number(column), scale: 1.0 }
}

pub fn printed(row: &Row, column: &str, ours: f64) -> Found {
    let text = row.text(column);
    let digits = text.split_once('.').map_or(0, |(_, after)| after.len());
    Found { column: column.into(), ours, theirs: row.number(column), scale: 0.1f64.powi(digits as i32) }
}

pub fn relative(row: &Row, column: &str, ours: f64) -> Found {
    Found { scale: row.number(column), ..plainly(row, column, ours) }
}

pub fn chemical(name: &str) -> Chemical {
    match name {
        "HCl" => Chemical::HydrochloricAcid,
        "NaHSO4" => Chemical::SodiumBisulfate,
        "NaHCO3" => Chemical::SodiumBicarbonate,
        "Na2CO3" => Chemical::SodiumCarbonate,
        "NaOH" => Chemical::SodiumHydroxide,
        "CaCl2" => Chemical::CalciumChloride,
        "H3BO3" => Chemical::BoricAcid,
        "borax" => Chemical::Borax,
        "cyanuric_acid" => Chemical::CyanuricAcid,
        "CO2" => Chemical::CarbonDioxide,
        "NaOCl" => Chemical::SodiumHypochlorite,
        "Ca(OCl)2" => Chemical::CalciumHypochlorite,
        "dichlor" => Chemical::Dichlor,
        "trichlor" => Chemical::Trichlor,
        "NaCl" => Chemical::SodiumChloride,
        other => panic!("no chemical {other}"),
    }
}

pub fn volume(row: &Row) -> Volume {
    let litres = match row.text("volume_unit") {
        "[gal_us]" => 3.785411784,
        "L" => 1.0,
        _ => 1000.0,
    };
    m3(row.number("volume") * litres / 1000.0)
}

/// The pool of a row of measures, in feet or in metres.
pub fn pool(row: &Row) -> Pool {
    let one = if row.text("unit") == "m" { 1.0 } else { 0.3048 };
    let m = |x: f64| Length::from_metres(x * one).unwrap();
    let all =
        |name: &str| -> Vec<f64> { row.text(name).split_whitespace().map(|x| x.parse().unwrap()).collect() };
    let list = |of: &[f64]| {
        let mut list = Measures::NONE;
        assert!(of.iter().all(|x| list.push(m(*x))));
        list
    };
    let (sides, depths, parts) = (all("measures"), all("depths"), all("floor_parts"));
    let two = |of: &[f64]| [m(of[0]), m(of[1])];
    Pool {
        outline: match row.text("outline") {
            "rectangle" => Outline::Rectangle(two(&sides)),
            "round" => Outline::Round(m(sides[0])),
            "ellipse" => Outline::Ellipse(two(&sides)),
            "stadium" => Outline::Stadium(two(&sides)),
            "kidney" => Outline::Kidney(m(sides[0]), two(&sides[1..])),
            _ => Outline::Offsets(m(sides[0]), list(&sides[1..])),
        },
        floor: match row.text("floor") {
            "level" => Floor::Level(m(depths[0])),
            "slope" => Floor::Slope(two(&depths)),
            "break" => Floor::Break(two(&depths), two(&parts)),
            _ => Floor::Hopper(two(&depths), m(parts[0]), two(&parts[1..])),
        },
        wing: (all("wing").first()).map(|_| [0, 1, 2].map(|i| m(all("wing")[i]))),
        ledge: all("ledge").first().map(|area| Ledge {
            area: Area::from_square_metres(area * one * one).unwrap(),
            water: m(all("ledge")[1]),
            around: m(all("ledge")[2]),
        }),
        steps: all("steps").first().map(|width| Steps {
            width: m(*width),
            tread: m(all("steps")[1]),
            heights: list(&all("steps")[2..]),
        }),
        less: Volume::NONE,
        spa: m3(row.number("spa") * one * one * one),
    }
}
