//! Which size do tape and meter tell? Only what the chosen shape asks for is read.

use crate::answer::Shown;
use crate::contract::fields::{self, Answered, FLOORS, In, SHAPES};
use crate::contract::units::{Kind, Unit};
use crate::form::Units;
use crate::present::drawing;
use crate::read::length;
use crate::read::number::{self, NotNumber};
use crate::read::reader::Reader;
use crate::text::joined;
use chem::ShapeError;
use chem::pool_shape::{Floor, Ledge, Measures, Outline, Pool, Steps};
use chem::{Area, Length, Volume, bounds};
use plan::water::size::{Measured, apart, measured};
use plan::{Method, Typed, policy};

const LEDGE: [&str; 3] = ["pool.ledge-area", "pool.ledge-water", "pool.ledge-around"];
const METER: [&str; 2] = ["pool.meter-before", "pool.meter-after"];
const STEPS: [&str; 3] = ["pool.steps", "pool.steps-width", "pool.steps-tread"];

impl Reader<'_> {
    /// The measured size, once it is complete.
    pub fn measured(&mut self) -> Option<Measured> {
        let metered = self.metered();
        let shape = self.choice("pool.shape", SHAPES, |code| code);
        let pool = shape.and_then(|shape| {
            self.answer.say("measure.shape");
            self.answer.say(&joined(&["shape.", shape]));
            let pool = self.pool(shape);
            if pool.is_none() {
                self.answer.say("measure.unfinished");
            }
            pool
        });
        let taped = pool.and_then(|pool| match pool.size() {
            Ok(size) => Some((pool, size)),
            Err(fault) => {
                self.contradiction(fault);
                None
            }
        });
        for (name, kind, asked) in [
            ("length.unit", Kind::Length, "pool.length.unit"),
            ("part.unit", Kind::Water, "pool.part.unit"),
            ("meter.unit", Kind::Water, "pool.meter.unit"),
        ] {
            let unit = Unit::find(kind, self.form.text(asked));
            self.answer.put(name, unit.map_or(Shown::words(String::new()), |u| Shown::word(u.code)));
            if let Some(unit) = unit.filter(|u| u.kind == Kind::Length) {
                self.answer.put("area.unit", Shown::word(unit.squared().code));
            }
        }
        // By the meter alone, or by both; a tape that is not finished takes nothing from the meter.
        measured(metered, taped)
    }

    /// Is the meter at fault?
    pub fn is_metered_wrong(&self) -> bool {
        METER.iter().any(|name| self.is_faulty(name))
    }

    fn metered(&mut self) -> Option<Volume> {
        if !self.any(&METER) {
            return None;
        }
        let [before, after] = METER.map(|name| self.asked(name));
        let filled = after? - before?;
        if filled <= 0.0 {
            self.fault(METER[1], "not-above");
            return None;
        }
        let volume = bounds::POOL.check(filled).and_then(Volume::from_cubic_metres).ok();
        if volume.is_none() {
            self.answer.say_once("measure.nothing");
        }
        volume
    }

    fn pool(&mut self, shape: &str) -> Option<Pool> {
        // All of it is asked before any of it is missed.
        let outline = self.outline(shape);
        let floor = self.floor(shape);
        let wing = if shape == "ell" {
            let sides = ["pool.length-b", "pool.width-b", "pool.depth-b"].map(|name| self.length(name));
            Some(match sides {
                [Some(l), Some(w), Some(d)] => Typed::Valid([l, w, d]),
                _ => Typed::Invalid,
            })
        } else {
            None
        };
        let ledge = self.any(&LEDGE).then(|| {
            let area = self.asked(LEDGE[0]).and_then(|x| Area::from_square_metres(x).ok());
            match [LEDGE[1], LEDGE[2]].map(|name| self.length(name)) {
                [Some(water), Some(around)] => area.map(|area| Ledge { area, water, around }),
                _ => None,
            }
        });
        let steps = self.any(&STEPS).then(|| {
            let heights = self.list(STEPS[0]).valid();
            match [STEPS[1], STEPS[2]].map(|name| self.length(name)) {
                [Some(width), Some(tread)] => heights.map(|heights| Steps { width, tread, heights }),
                _ => None,
            }
        });
        let [less, spa] = ["pool.less", "pool.spa"]
            .map(|name| self.optional(name, |x| Volume::from_cubic_metres(x).ok()).or(Volume::NONE));
        Some(Pool {
            outline: outline?,
            floor: floor?,
            wing: match wing {
                Some(wing) => Some(wing.valid()?),
                None => None,
            },
            // What was begun is finished, or nothing is.
            ledge: match ledge {
                Some(ledge) => Some(ledge?),
                None => None,
            },
            steps: match steps {
                Some(steps) => Some(steps?),
                None => None,
            },
            less: less?,
            spa: spa?,
        })
    }

    fn outline(&mut self, shape: &str) -> Option<Outline> {
        Some(match shape {
            "round" => Outline::Round(self.length("pool.length")?),
            "kidney" => {
                let (length, lobes) = (self.length("pool.length"), self.two("pool.lobe-a", "pool.lobe-b"));
                Outline::Kidney(length?, lobes?)
            }
            "freeform" => {
                let (gap, widths) = (self.length("pool.gap"), self.list("pool.widths").valid());
                Outline::Offsets(gap?, widths?)
            }
            _ => {
                let sides = self.two("pool.length", "pool.width")?;
                match shape {
                    "ellipse" => Outline::Ellipse(sides),
                    "stadium" => Outline::Stadium(sides),
                    _ => Outline::Rectangle(sides),
                }
            }
        })
    }

    fn floor(&mut self, shape: &str) -> Option<Floor> {
        if shape == "freeform" && self.any(&["pool.depths"]) {
            self.answer.say("measure.depths");
            return self.list("pool.depths").valid()?.mean().map(Floor::Level);
        }
        let floor = self.choice("pool.floor", FLOORS, |code| code);
        let Some(floor) = floor else {
            if !self.is_faulty("pool.floor") {
                self.miss("pool.floor");
            }
            return None;
        };
        self.answer.say("measure.floor");
        self.answer.say(&joined(&["floor.", floor]));
        if floor == "level" {
            return self.length("pool.shallow").map(Floor::Level);
        }
        let depths = self.two("pool.shallow", "pool.deep");
        Some(match floor {
            "slope" => Floor::Slope(depths?),
            "break" => {
                let parts = self.two("pool.flat", "pool.slope");
                Floor::Break(depths?, parts?)
            }
            _ => {
                let (flat, pad) = (self.length("pool.flat"), self.two("pool.pad-length", "pool.pad-width"));
                Floor::Hopper(depths?, flat?, pad?)
            }
        })
    }

    /// Is anything typed in one of them?
    fn any(&self, names: &[&str]) -> bool {
        names.iter().any(|name| !self.form.text(name).is_empty())
    }

    /// A number that the measured size can't do without.
    fn asked(&mut self, name: &'static str) -> Option<f64> {
        let value = self.number(name);
        if value.is_none() && self.form.text(name).is_empty() {
            self.miss(name);
        } else if value.is_none() {
            self.miss_unit(name);
        }
        value
    }

    fn length(&mut self, name: &'static str) -> Option<Length> {
        Length::from_metres(self.asked(name)?).ok()
    }

    fn two(&mut self, a: &'static str, b: &'static str) -> Option<[Length; 2]> {
        let (a, b) = (self.length(a), self.length(b));
        Some([a?, b?])
    }

    fn miss(&mut self, name: &str) {
        let state = joined(&["need.", &name.replace('.', "-")]);
        self.answer.say_once(&state);
    }

    /// Where only the unit is missing, ask for that.
    fn miss_unit(&mut self, name: &str) {
        if self.answer.faults.iter().any(|fault| fault.field == name && fault.code == "no-unit") {
            self.miss(fields::unit_of(name));
        }
    }

    /// Numbers in a row, with an echo of how many and which.
    fn list(&mut self, name: &'static str) -> Typed<Measures> {
        let Some(Answered::List(bounds, In::Asked(kind, asked))) = fields::find(name).map(|f| &f.answer)
        else {
            return Typed::Invalid;
        };
        let text = self.form.text(name);
        if text.is_empty() {
            self.miss(name);
            return Typed::Missing;
        }
        let code = match (length::items(text, self.signs), Self::unit(*kind, self.form.text(asked))) {
            (None, _) => "list-unsure",
            (Some(items), _) if items.is_empty() => "not-a-number",
            (_, Err(code)) => code,
            (Some(items), Ok(unit)) => match self.items(name, &items, bounds, unit) {
                Ok(list) => return list.map_or(Typed::Invalid, Typed::Valid),
                Err(code) => code,
            },
        };
        self.fault(name, code);
        self.miss_unit(name);
        Typed::Invalid
    }

    /// The items of a list; `None` where one has its fault already.
    fn items(
        &mut self,
        name: &'static str,
        items: &[&str],
        bounds: &'static chem::Bounds,
        unit: &'static Unit,
    ) -> Result<Option<Measures>, &'static str> {
        let mut list = Measures::NONE;
        let mut echo = String::new();
        let read = if unit.code == "m" { number::read } else { length::feet };
        for item in items {
            let typed = match read(item, self.signs) {
                Ok(Some(typed)) => typed,
                Err(NotNumber::Unit) => return Err("unit-in-text"),
                _ => return Err("not-a-number"),
            };
            let Some(value) = self.within(name, bounds, Some(unit), typed) else { return Ok(None) };
            if !Length::from_metres(value).is_ok_and(|length| list.push(length)) {
                return Err("list-long");
            }
            if !echo.is_empty() {
                echo.push_str("; ");
            }
            let rounded = (unit.outward(value) * 1000.0).round() / 1000.0;
            echo.push_str(&Shown::plain(rounded, None, self.signs).text);
        }
        let said = joined(&["echo.", name]);
        self.answer.put(&said, Shown { unit: Some(unit.code), ..Shown::words(echo) });
        self.answer.put(&joined(&[&said, ".count"]), Shown::number(items.len() as f64, 0, false, self.signs));
        self.answer.say(&said);
        Ok(Some(list))
    }

    fn contradiction(&mut self, fault: ShapeError) {
        let (field, code) = match fault {
            ShapeError::NotDeeper => ("pool.deep", "not-deeper"),
            ShapeError::TooLong => ("pool.flat", "too-long"),
            ShapeError::PadTooLarge => ("pool.pad-length", "too-long"),
            ShapeError::WiderThanLong => ("pool.width", "wider-than-long"),
            ShapeError::NoLedge | ShapeError::LedgeTooLarge => ("pool.ledge-water", "no-ledge"),
            ShapeError::TooFew => ("pool.widths", "too-few"),
            ShapeError::OtherFloor => ("pool.floor", "other-floor"),
            _ => return self.answer.say_once("measure.nothing"),
        };
        self.fault(field, code);
    }

    /// The measured size, its parts, how far it is off what was typed, and the drawing.
    pub fn show(&mut self, measured: &Measured, typed: Option<Volume>, units: Units) {
        let (signs, wrong) = (self.signs, self.is_metered_wrong());
        let answer = &mut *self.answer;
        let part = Unit::find(Kind::Part, "%").unwrap_or(units.water);
        let (water, surface) = (units.water, units.length.squared());
        let volume = measured.volume.cubic_metres();
        let mut figures = vec![
            ("measured.volume", volume, water),
            ("measured.volume.also", volume, water.also()),
            ("measured.doubt", policy::volume_error(measured.method).rho, part),
        ];
        let mut states = vec![
            ("measure.known", !wrong),
            ("measure.metered", measured.method == Method::Metered),
            ("measure.drawn", measured.taped.is_some()),
        ];
        if wrong {
            figures.clear(); // What the tape tells is not the size then.
        } else if let Some(typed) = typed {
            let (more, wrong) = apart(typed, measured.volume);
            figures.push(("measured.apart", more.abs(), part));
            states.extend_from_slice(&[
                ("measure.typed", true),
                (if more > 0.0 { "measure.typed.more" } else { "measure.typed.less" }, true),
                ("measure.apart", wrong),
            ]);
        }
        if let Some((pool, size)) = &measured.taped {
            let walls = size.walls.cubic_metres();
            figures.extend_from_slice(&[
                ("measured.walls", walls, water),
                ("measured.steps", size.steps.cubic_metres(), water),
                ("measured.ledge", size.ledge.cubic_metres(), water),
                ("measured.area", size.area.square_metres(), surface),
                ("measured.depth", size.depth.metres(), units.length),
            ]);
            if let Some(ends) = size.ends.map(Volume::cubic_metres) {
                figures.extend_from_slice(&[
                    ("measured.ends", ends, water),
                    ("measured.over", ends / walls - 1.0, part),
                ]);
            }
            if let Some((trapezoid, simpson)) = size.offsets {
                figures.push(("measured.trapezoid", trapezoid.square_metres(), surface));
                figures.extend(simpson.map(|x| ("measured.simpson", x.square_metres(), surface)));
                states.push(("measure.odd", simpson.is_none()));
            }
            states.extend_from_slice(&[
                ("measure.steps", pool.steps.is_some()),
                ("measure.ledge", pool.ledge.is_some()),
                ("measure.broken", size.ends.is_some()),
                ("measure.less", pool.less > Volume::NONE),
                ("measure.spa", pool.spa > Volume::NONE),
            ]);
            drawing::draw(pool, answer, units.length, signs);
        }
        for (name, x, unit) in figures {
            answer.put(name, Shown::of(x, unit, signs));
        }
        for (state, _) in states.iter().filter(|(_, holds)| *holds) {
            answer.say(state);
        }
    }
}
