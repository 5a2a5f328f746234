//! Is every answer of the chemistry a number inside its row, or a typed error? One function a room of it.

use crate::ask::{Ask, constructors};
use crate::finite::finite;
use chem::pool_shape::{Floor, Ledge, Measures, Outline, Pool, Steps};
use chem::treatment::{AcidStrength, BleachStrength, Chemical, Dose, recipe};
use chem::*;

/// One room of the crate, asked once.
pub type Question = fn(&mut Ask);

/// Every room of the crate.
pub const QUESTIONS: &[Question] = &[
    constructors,
    amounts,
    samples,
    waters,
    recipes,
    treatments,
    salts,
    dilutions,
    chlorines,
    conductivities,
    comparisons,
    densities,
    shapes,
];

/// Whatever may be added, taken away or multiplied, by any number at all.
fn amounts(ask: &mut Ask) {
    let (f, times) = (ask.fraction(), ask.any());
    macro_rules! one_of {
        ($($name:ident),*) => {
            ask.one::<fn(&mut Ask, Fraction, f64)>(&[$(|ask, f, times| {
                let (a, b) = (ask.$name(), ask.$name());
                let sums = (a.checked_add(b), a.checked_sub(b), a.saturating_sub(b));
                finite((a, b, f, times), (sums, a.checked_mul(times), a * f));
            }),*])(ask, f, times)
        };
    }
    one_of!(
        volume,
        mass,
        salinity,
        alkalinity,
        hardness,
        cyanuric_acid,
        boron,
        magnesium,
        sulfate,
        chlorine,
        solids,
        length,
        area
    );
    let (volume, mass, salt, purity) = (ask.volume(), ask.mass(), ask.salinity(), ask.purity());
    let [t, u] = [ask.temperature(), ask.temperature()];
    finite((volume, mass, salt, purity, t, u, f), (volume * salt, mass * purity, f * f, f.rest(), t - u));
    let x = ask.any();
    let row = ask.one(bounds::TABLE);
    if let Ok(x) = row.check(x) {
        assert!(x.is_finite() && row.low <= x && x <= row.high, "{row:?} took {x}");
    }
    let [percent, gravity] = [ask.any(), ask.any()];
    finite(
        (percent, gravity),
        (
            BleachStrength::from_mass_percent(percent, gravity),
            BleachStrength::from_hypochlorite_percent(percent),
            BleachStrength::from_trade_percent(percent),
            [AcidStrength::from_mass_percent(percent), AcidStrength::from_baume(gravity)],
        ),
    );
}

fn samples(ask: &mut Ask) {
    let s = ask.sample();
    let plain = Sample {
        temperature: s.temperature,
        ph: s.ph,
        alkalinity: s.alkalinity,
        hardness: s.hardness,
        cyanuric_acid: s.cyanuric_acid,
        salt: s.salt,
        boron: Boron::NONE,
        magnesium: Magnesium::NONE,
        sulfate: Sulfate::NONE,
    };
    for s in [s, plain] {
        finite(s, (s.state(), s.water()));
    }
}

fn waters(ask: &mut Ask) {
    let Some(water) = ask.water() else { return };
    let air = ask.air();
    finite((water, air), (water.state(), water.in_air(air), water.alkalinity(), water.spent().state()));
}

fn recipes(ask: &mut Ask) {
    let Some(water) = ask.water() else { return };
    let goal = ask.goal();
    let found = recipe::recipe(&water, &goal);
    finite((water, goal), found);
    if let Ok(recipe) = found {
        let there = recipe.applied(water);
        finite((water, recipe), (there, there.state()));
    }
    finite((water, goal), recipe::minerals(&water, goal.hardness, goal.cyanuric_acid));
    let rise = ask.any();
    finite(rise, recipe::alkalinity_by_bicarbonate(rise));
    let (chemical, ph) = (ask.one(Chemical::ALL), ask.ph());
    let found = recipe::dose_to_ph(&water, chemical, ph);
    finite((water, chemical, ph), found);
    if let Ok(dose) = found {
        let there = water.treated(chemical, dose);
        finite((water, chemical, dose), (there, there.state()));
    }
}

fn treatments(ask: &mut Ask) {
    let (chemical, dose, volume) = (ask.one(Chemical::ALL), ask.dose(), ask.volume());
    let acid = if ask.one(&[true, false]) { ask.acid_percent() } else { ask.acid_baume() };
    let (bleach, purity, free) = (ask.bleach_trade(), ask.purity(), ask.chlorine());
    finite(
        (chemical, dose, volume, acid, bleach, purity, free),
        (
            [chemical.molar_mass(), chemical.available_chlorine(), acid.mol_per_l(), bleach.g_per_l()],
            dose.mmol_per_l(),
            dose.of_powder(chemical, volume, purity),
            dose.of_acid(volume, acid),
            dose.of_bleach(volume, bleach),
            Dose::of_chlorine(chemical, free),
        ),
    );
}

fn salts(ask: &mut Ask) {
    let (volume, rise, purity, mass) = (ask.volume(), ask.salinity(), ask.purity(), ask.mass());
    finite(
        (volume, rise, purity, mass),
        (salt::mass_for(volume, rise, purity), salt::rise_from(mass, purity, volume)),
    );
    let (responds, ta, ch) = (ask.responds(), ask.alkalinity(), ask.hardness());
    finite(
        (rise, responds, ta, ch),
        (salt::sodium_chloride_behind(rise, responds, ta, ch), salt::other_ions(responds, ta, ch)),
    );
}

/// More would tell nothing new.
const MOST_PARTS: usize = 50;

fn dilutions(ask: &mut Ask) {
    let (now, target, fill, cap) = (ask.salinity(), ask.salinity(), ask.salinity(), ask.fraction());
    finite(
        (now, target, fill, cap),
        (dilution::share(now, target, fill), dilution::exchange(ask.volume(), now, target, fill)),
    );
    let share = ask.fraction();
    let mut parts = dilution::in_parts(share, cap);
    for part in parts.by_ref().take(MOST_PARTS) {
        finite((share, cap), part);
    }
    // A cap of nothing moves nothing, for ever.
    assert!(cap.ratio() > 0.0 || parts.next().is_none(), "{:?} has no end", (share, cap));
    macro_rules! replaced {
        ($($name:ident),*) => {$(
            let (old, new) = (ask.$name(), ask.$name());
            finite((old, new, cap), dilution::Conserved::replaced(old, new, cap));
        )*};
    }
    replaced!(salinity, alkalinity, hardness, cyanuric_acid, boron, magnesium, sulfate);
}

fn chlorines(ask: &mut Ask) {
    let (free, cya, ph, t, strength) =
        (ask.chlorine(), ask.cyanuric_acid(), ask.ph(), ask.temperature(), ask.strength());
    finite((free, cya, ph, t, strength), chlorine::species(free, cya, ph, t, strength));
}

fn conductivities(ask: &mut Ask) {
    let (salt, t, read, part) = (ask.salinity(), ask.temperature(), ask.conductivity(), ask.fraction());
    finite(
        (salt, t, read, part),
        (
            conductivity::of_salt(salt, t),
            conductivity::salt_of(read, t),
            conductivity::salt_of_compensated(read, t, part),
            conductivity::by_factor(read, part),
        ),
    );
}

fn comparisons(ask: &mut Ask) {
    let (t, ph, ch, ta, solids) =
        (ask.temperature(), ask.ph(), ask.hardness(), ask.carbonate(), ask.solids());
    finite(
        (t, ph, ch, ta, solids),
        (langelier::standard_methods(t, ph, ch, ta, solids), langelier::closed_form(t, ph, ch, ta, solids)),
    );
}

fn shapes(ask: &mut Ask) {
    let mut length = || Length::from_metres(ask.within(&bounds::LENGTH)).unwrap();
    let mut two = || [length(), length()];
    let (mut list, [a, b], [c, d]) = (Measures::NONE, two(), two());
    let (depths, parts, pad, gap) = (two(), two(), two(), length());
    for x in [a, b, c, d, gap].iter().take(ask.one(&[0, 1, 2, 3, 4, 5])) {
        assert!(list.push(*x));
    }
    let area = Area::from_square_metres(ask.within(&bounds::AREA)).unwrap();
    let pool = Pool {
        outline: ask.one(&[
            Outline::Rectangle([a, b]),
            Outline::Round(a),
            Outline::Ellipse([a, b]),
            Outline::Stadium([a, b]),
            Outline::Kidney(a, [b, c]),
            Outline::Offsets(gap, list),
        ]),
        floor: ask.one(&[
            Floor::Level(d),
            Floor::Slope(depths),
            Floor::Break(depths, parts),
            Floor::Hopper(depths, parts[0], pad),
        ]),
        wing: ask.one(&[None, Some([c, d, a])]),
        ledge: ask.one(&[None, Some(Ledge { area, water: c, around: d })]),
        steps: ask.one(&[None, Some(Steps { width: a, tread: b, heights: list })]),
        less: Volume::from_cubic_metres(ask.within(&bounds::POOL)).unwrap(),
        spa: ask.volume(),
    };
    finite(pool, (pool.size(), pool.outline.length(), list.mean(), list.sum()));
}

fn densities(ask: &mut Ask) {
    let (t, salt) = (ask.temperature(), ask.salinity());
    finite((t, salt), (density::pure_water(t), density::brine(t, salt), density::water_content(t, salt)));
}
