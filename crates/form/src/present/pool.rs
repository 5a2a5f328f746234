//! What of the pool's measured size?

use super::Filler;
use super::drawing;
use crate::answer::Shown;
use crate::contract::units::{QuantityKind, Unit};
use crate::contract::{Fact, Output};
use chem::Volume;
use plan::water::size::{Measured, apart};
use plan::{Method, policy};

/// The measured size, its parts, how far it is off what was typed, and the drawing.
pub fn measured(f: &mut Filler, measured: &Measured, typed: Option<Volume>, wrong: bool) {
    let (answer, units, signs) = (&mut *f.answer, f.units, f.signs);
    let part = Unit::find(QuantityKind::Part, "%").unwrap_or(units.water);
    let (water, surface) = (units.water, units.length.squared());
    let volume = measured.volume.cubic_metres();
    let mut figures = vec![
        (Output::MeasuredVolume, volume, water),
        (Output::MeasuredVolumeAlso, volume, water.also()),
        (Output::MeasuredAccuracy, policy::volume_error(measured.method).rho, part),
    ];
    let mut states = vec![
        (Fact::MeasureKnown, !wrong),
        (Fact::MeasureMetered, measured.method == Method::Metered),
        (Fact::MeasureDrawn, measured.taped.is_some()),
    ];
    if wrong {
        figures.clear(); // What the tape tells is not the size then.
    } else if let Some(typed) = typed {
        let (more, wrong) = apart(typed, measured.volume);
        figures.push((Output::MeasuredApart, more.abs(), part));
        states.extend_from_slice(&[
            (Fact::MeasureTyped, true),
            (if more > 0.0 { Fact::MeasureTypedMore } else { Fact::MeasureTypedLess }, true),
            (Fact::MeasureApart, wrong),
        ]);
    }
    if let Some((pool, size)) = &measured.taped {
        let walls = size.walls.cubic_metres();
        figures.extend_from_slice(&[
            (Output::MeasuredWalls, walls, water),
            (Output::MeasuredSteps, size.steps.cubic_metres(), water),
            (Output::MeasuredLedge, size.ledge.cubic_metres(), water),
            (Output::MeasuredArea, size.area.square_metres(), surface),
            (Output::MeasuredDepth, size.depth.metres(), units.length),
        ]);
        if let Some(ends) = size.ends.map(Volume::cubic_metres) {
            figures.extend_from_slice(&[
                (Output::MeasuredEnds, ends, water),
                (Output::MeasuredOver, ends / walls - 1.0, part),
            ]);
        }
        if let Some((trapezoid, simpson)) = size.offsets {
            figures.push((Output::MeasuredTrapezoid, trapezoid.square_metres(), surface));
            figures.extend(simpson.map(|x| (Output::MeasuredSimpson, x.square_metres(), surface)));
            states.push((Fact::MeasureOdd, simpson.is_none()));
        }
        states.extend_from_slice(&[
            (Fact::MeasureSteps, pool.steps.is_some()),
            (Fact::MeasureLedge, pool.ledge.is_some()),
            (Fact::MeasureBroken, size.ends.is_some()),
            (Fact::MeasureSolids, pool.less > Volume::NONE),
            (Fact::MeasureSpa, pool.spa > Volume::NONE),
        ]);
        drawing::draw(pool, answer, units.length, signs);
    }
    for (name, x, unit) in figures {
        answer.put(name, Shown::of(x, unit, signs));
    }
    for (state, _) in states.into_iter().filter(|(_, holds)| *holds) {
        answer.say(state);
    }
}
