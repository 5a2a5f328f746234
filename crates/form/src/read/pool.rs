//! Which size do tape and meter tell? Only what the chosen shape asks for is read.

use crate::answer::Shown;
use crate::contract::codes::{FloorShape, Shape};
use crate::contract::units::{QuantityKind, Unit};
use crate::contract::{Fact, FaultCode, Field, FieldId, FieldType, Output, OutputId, State, UnitRule};
use crate::read::length;
use crate::read::number::{self, NotNumber};
use crate::read::reader::Reader;
use chem::ShapeError;
use chem::pool_shape::{Floor, Ledge, Measures, Outline, Pool, Steps};
use chem::{Area, Length, Volume, bounds};
use plan::Typed;
use plan::water::size::{Measured, measured};

const LEDGE: [Field; 3] = [Field::PoolLedgeArea, Field::PoolLedgeWater, Field::PoolLedgeAround];
const METER: [Field; 2] = [Field::PoolMeterBefore, Field::PoolMeterAfter];
const STEPS: [Field; 3] = [Field::PoolSteps, Field::PoolStepsWidth, Field::PoolStepsTread];

impl Reader<'_> {
    /// The measured size, once it is complete.
    pub fn measured(&mut self) -> Option<Measured> {
        let metered = self.metered();
        let shape = self.choice(Field::PoolShape, Shape::ALL);
        let pool = shape.and_then(|shape| {
            self.answer.say(Fact::MeasureShape);
            self.answer.say(shape);
            let pool = self.pool(shape);
            if pool.is_none() {
                self.answer.say(Fact::MeasureUnfinished);
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
            (Output::LengthUnit, QuantityKind::Length, Field::PoolLengthUnit),
            (Output::SolidsUnit, QuantityKind::Water, Field::PoolSolidsUnit),
            (Output::MeterUnit, QuantityKind::Water, Field::PoolMeterUnit),
        ] {
            let unit = Unit::find(kind, self.text(asked));
            self.answer.put(name, unit.map_or(Shown::words(String::new()), |u| Shown::word(u.code)));
            if let Some(unit) = unit.filter(|u| u.kind == QuantityKind::Length) {
                self.answer.put(Output::AreaUnit, Shown::word(unit.squared().code));
            }
        }
        // By the meter alone, or by both; a tape that is not finished takes nothing from the meter.
        measured(metered, taped)
    }

    /// Is the meter at fault?
    pub fn is_metered_wrong(&self) -> bool {
        self.any_faulty(&METER)
    }

    fn metered(&mut self) -> Option<Volume> {
        if !self.any(&METER) {
            return None;
        }
        let [before, after] = METER.map(|field| self.asked(field));
        let filled = after? - before?;
        if filled <= 0.0 {
            self.fault(METER[1], FaultCode::NotAbove);
            return None;
        }
        let volume = bounds::POOL.check(filled).and_then(Volume::from_cubic_metres).ok();
        if volume.is_none() {
            self.answer.say(Fact::MeasureNothing);
        }
        volume
    }

    fn pool(&mut self, shape: Shape) -> Option<Pool> {
        // All of it is asked before any of it is missed.
        let outline = self.outline(shape);
        let floor = self.floor(shape);
        let wing = if shape == Shape::Ell {
            let sides = [
                self.length(Field::PoolLengthB),
                self.length(Field::PoolWidthB),
                self.length(Field::PoolDepthB),
            ];
            Some(match sides {
                [Some(l), Some(w), Some(d)] => Typed::Valid([l, w, d]),
                _ => Typed::Invalid,
            })
        } else {
            None
        };
        let ledge = self.any(&LEDGE).then(|| {
            let area = self.asked(LEDGE[0]).and_then(|x| Area::from_square_metres(x).ok());
            match [self.length(LEDGE[1]), self.length(LEDGE[2])] {
                [Some(water), Some(around)] => area.map(|area| Ledge { area, water, around }),
                _ => None,
            }
        });
        let steps = self.any(&STEPS).then(|| {
            let heights = self.list(STEPS[0]).valid();
            match [self.length(STEPS[1]), self.length(STEPS[2])] {
                [Some(width), Some(tread)] => heights.map(|heights| Steps { width, tread, heights }),
                _ => None,
            }
        });
        let mut volume = |name| self.optional(name, |x| Volume::from_cubic_metres(x).ok()).or(Volume::NONE);
        let (less, spa) = (volume(Field::PoolSolids), volume(Field::PoolSpa));
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

    fn outline(&mut self, shape: Shape) -> Option<Outline> {
        Some(match shape {
            Shape::Round => Outline::Round(self.length(Field::PoolLength)?),
            Shape::Kidney => {
                let (length, lobes) =
                    (self.length(Field::PoolLength), self.two(Field::PoolLobeA, Field::PoolLobeB));
                Outline::Kidney(length?, lobes?)
            }
            Shape::Freeform => {
                let (gap, widths) = (self.length(Field::PoolGap), self.list(Field::PoolWidths).valid());
                Outline::Offsets(gap?, widths?)
            }
            _ => {
                let sides = self.two(Field::PoolLength, Field::PoolWidth)?;
                match shape {
                    Shape::Ellipse => Outline::Ellipse(sides),
                    Shape::Stadium => Outline::Stadium(sides),
                    _ => Outline::Rectangle(sides),
                }
            }
        })
    }

    fn floor(&mut self, shape: Shape) -> Option<Floor> {
        if shape == Shape::Freeform && self.any(&[Field::PoolDepths]) {
            self.answer.say(Fact::MeasureDepths);
            return self.list(Field::PoolDepths).valid()?.mean().map(Floor::Level);
        }
        let floor = self.choice(Field::PoolFloor, FloorShape::ALL);
        let Some(floor) = floor else {
            if !self.is_faulty(Field::PoolFloor) {
                self.miss(Field::PoolFloor);
            }
            return None;
        };
        self.answer.say(Fact::MeasureFloor);
        self.answer.say(floor);
        if floor == FloorShape::Level {
            return self.length(Field::PoolShallow).map(Floor::Level);
        }
        let depths = self.two(Field::PoolShallow, Field::PoolDeep);
        Some(match floor {
            FloorShape::Slope => Floor::Slope(depths?),
            FloorShape::Break => {
                let parts = self.two(Field::PoolFlat, Field::PoolSlope);
                Floor::Break(depths?, parts?)
            }
            _ => {
                let (flat, pad) =
                    (self.length(Field::PoolFlat), self.two(Field::PoolPadLength, Field::PoolPadWidth));
                Floor::Hopper(depths?, flat?, pad?)
            }
        })
    }

    /// Is anything typed in one of them?
    fn any(&self, fields: &[Field]) -> bool {
        fields.iter().any(|field| !self.text(*field).is_empty())
    }

    /// A number that the measured size can't do without.
    fn asked(&mut self, field: Field) -> Option<f64> {
        let value = self.number(field);
        if value.is_none() && self.text(field).is_empty() {
            self.miss(field);
        } else if value.is_none() {
            self.miss_unit(field);
        }
        value
    }

    fn length(&mut self, field: Field) -> Option<Length> {
        Length::from_metres(self.asked(field)?).ok()
    }

    fn two(&mut self, a: Field, b: Field) -> Option<[Length; 2]> {
        let (a, b) = (self.length(a), self.length(b));
        Some([a?, b?])
    }

    fn miss(&mut self, field: Field) {
        self.answer.say(State::need(field));
    }

    /// Where only the unit is missing, ask for that.
    fn miss_unit(&mut self, field: Field) {
        let of = FieldId::Field(field);
        if self.answer.faults.iter().any(|fault| fault.field == of && fault.code == FaultCode::NoUnit) {
            field.unit().into_iter().for_each(|unit| self.miss(unit));
        }
    }

    /// Numbers in a row, with an echo of how many and which.
    fn list(&mut self, field: Field) -> Typed<Measures> {
        let FieldType::List(bounds, UnitRule::Asked(kind, asked)) = field.kind() else {
            return Typed::Invalid;
        };
        let text = self.texts.text(field);
        if text.is_empty() {
            self.miss(field);
            return Typed::Missing;
        }
        let code = match (length::items(text, self.signs), Self::unit(*kind, self.text(*asked))) {
            (None, _) => FaultCode::ListUnsure,
            (Some(items), _) if items.is_empty() => FaultCode::NotANumber,
            (_, Err(code)) => code,
            (Some(items), Ok(unit)) => match self.items(field.into(), &items, bounds, unit) {
                Ok(list) => return list.map_or(Typed::Invalid, Typed::Valid),
                Err(code) => code,
            },
        };
        self.fault(field, code);
        self.miss_unit(field);
        Typed::Invalid
    }

    /// The items of a list; `None` where one has its fault already.
    fn items(
        &mut self,
        field: FieldId,
        items: &[&str],
        bounds: &'static chem::Bounds,
        unit: &'static Unit,
    ) -> Result<Option<Measures>, FaultCode> {
        let mut list = Measures::NONE;
        let mut echo = String::new();
        let read = if unit.code == "m" { number::read } else { length::feet };
        for item in items {
            let typed = match read(item, self.signs) {
                Ok(Some(typed)) => typed,
                Err(NotNumber::Unit) => return Err(FaultCode::UnitInText),
                _ => return Err(FaultCode::NotANumber),
            };
            let Some(value) = self.within(field, bounds, Some(unit), typed) else { return Ok(None) };
            if !Length::from_metres(value).is_ok_and(|length| list.push(length)) {
                return Err(FaultCode::ListLong);
            }
            if !echo.is_empty() {
                echo.push_str("; ");
            }
            let rounded = (unit.outward(value) * 1000.0).round() / 1000.0;
            echo.push_str(&Shown::plain(rounded, None, self.signs).text);
        }
        self.answer.put(OutputId::Echo(field), Shown { unit: Some(unit.code), ..Shown::words(echo) });
        let count = Shown::number(items.len() as f64, 0, false, self.signs);
        self.answer.put(OutputId::EchoCount(field), count);
        self.understood(field);
        Ok(Some(list))
    }

    fn contradiction(&mut self, fault: ShapeError) {
        let (field, code) = match fault {
            ShapeError::NotDeeper => (Field::PoolDeep, FaultCode::NotDeeper),
            ShapeError::TooLong => (Field::PoolFlat, FaultCode::TooLong),
            ShapeError::PadTooLarge => (Field::PoolPadLength, FaultCode::TooLong),
            ShapeError::WiderThanLong => (Field::PoolWidth, FaultCode::WiderThanLong),
            ShapeError::NoLedge | ShapeError::LedgeTooLarge => (Field::PoolLedgeWater, FaultCode::NoLedge),
            ShapeError::TooFew => (Field::PoolWidths, FaultCode::TooFew),
            ShapeError::OtherFloor => (Field::PoolFloor, FaultCode::OtherFloor),
            _ => return self.answer.say(Fact::MeasureNothing),
        };
        self.fault(field, code);
    }
}
