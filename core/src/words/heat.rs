//! The heat in words: how hot to drop the tyre on, the stick that tells it by hand, how long there is, what wood it takes.

use uom::si::f64::{Mass, Time};
use uom::si::mass::kilogram;
use uom::si::time::second;

use super::style::Style;
use super::tyring::hot;
use crate::quantity::circumference::Diameter;
use crate::quantity::temperature::in_celsius;
use crate::quantity::{Band, Temperature, decimal};
use crate::tyring::hot::colour::Colour;
use crate::tyring::hot::{DropOn, Verdict, Window};

/// The stick that is cut to length and turned in the hot tyre.
#[must_use]
pub fn stick(stick: Diameter, style: Style) -> String {
    let length = style.size(super::grip::halves(stick.0));
    let length = length.trim_start_matches("≈ ");
    style.fill(&format!("Hot-gauge stick: {length}. When it turns freely in the hot {{tyre}}, the {{tyre}} is large enough."))
}

/// How hot it must be.
#[must_use]
pub fn drop_on(drop: &DropOn, style: Style) -> String {
    let said = format!(
        "Drop it on at {} (± 50 °C: trust the stick before the figure).",
        hot(drop.at)
    );
    style.fill(&said)
}

/// Why one coefficient out of a handbook asks for too much, and that more heat gives nothing.
#[must_use]
pub fn by_handbook(drop: &DropOn, style: Style) -> String {
    let [wrought, mild] = drop.by_handbook.map(|at| tens(in_celsius(at)));
    let said = format!(
        "Iron grows faster the hotter it is. With the one coefficient of a handbook, which holds near 100 °C, it would have to be {wrought} °C (6.48 millionths for each °F, W. H. Dooley) or {mild} °C (12.2 for each K). Above {} it grows no further: more heat only burns the {{sole}}.",
        hot(drop.most_useful)
    );
    style.fill(&said)
}

/// How long there is.
#[must_use]
pub fn window(window: &Window, style: Style) -> String {
    let left = seconds(window.left);
    let said = match window.verdict {
        Verdict::DoNotTry => format!(
            "Do not try: in wind only {left} s are left after the carry before it touches. Carry it less far, take it out hotter, or take less {{draw}}."
        ),
        Verdict::Enough => {
            let still = seconds(window.until_it_touches.high);
            format!(
                "Count on {left} s after the carry before it touches, in wind; in still air it may be {still} s from the fire."
            )
        }
    };
    style.fill(&said)
}

/// How hot it must leave the fire, where it is to be carried.
#[must_use]
pub fn leave_at(window: &Window) -> Option<String> {
    let at = window.leave_the_fire_at?;
    Some(format!(
        "To be hot enough still after the carry, take it out at {}.",
        hot(at)
    ))
}

/// The wood for one tyre on a fire of its own.
#[must_use]
pub fn wood(wood: &Band<Mass>, style: Style) -> String {
    let [low, middle, high] = [wood.low, wood.middle, wood.high].map(kilograms);
    style.fill(&format!("About {middle} kg of dry wood for this {{tyre}} ({low} to {high}: open fires differ); several in one fire take less than as many fires."))
}

/// What the colour says, and how little.
#[must_use]
pub fn colours(at: Temperature) -> String {
    let names: Vec<&str> = Colour::names(at).map(name).collect();
    let colour = if names.is_empty() {
        "no colour by day".to_owned()
    } else {
        names.join(" or ")
    };
    format!(
        "Its colour then: {colour}. The charts differ by 100 °C and more, and daylight hides the first reds."
    )
}

fn name(colour: Colour) -> &'static str {
    match colour {
        Colour::JustSeen => "just seen in the dark",
        Colour::DullRed => "dull red",
        Colour::Cherry => "cherry red",
        Colour::Orange => "orange",
    }
}

fn tens(v: f64) -> String {
    decimal((v / 10.0).round() * 10.0, 0)
}

fn seconds(time: Time) -> String {
    let s = time.get::<second>();
    // Down, and no finer than the reckoning is.
    decimal((s / 10.0).floor() * 10.0, 0)
}

fn kilograms(mass: Mass) -> String {
    decimal(mass.get::<kilogram>(), 0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::Iron;
    use crate::quantity::Percent;
    use crate::quantity::circumference::Circumference;
    use crate::quantity::length::millimetres;
    use crate::quantity::temperature::celsius;
    use crate::tyring::hot::fire::{self, FuelMoisture};
    use crate::tyring::hot::window::{Carry, window as reckon};
    use crate::tyring::hot::{HotTyre, Over};
    use crate::words::sample::style;

    fn told(draw: f64, carry: f64) -> String {
        let tyre = HotTyre::of(
            Iron::Steel,
            Circumference(millimetres(4241.0 - draw)),
            millimetres(60.0),
            millimetres(16.0),
        )
        .unwrap();
        let over = Over::of(
            Circumference(millimetres(4241.0)),
            millimetres(2.0),
            millimetres(2.0),
            millimetres(3.0),
        )
        .unwrap();
        let drop = over.drop_on(&tyre).unwrap();
        let carry = Carry::of(celsius(15.0), None, Time::new::<second>(carry)).unwrap();
        let window_ = reckon(&tyre, &over, &carry, drop.most_useful).unwrap();
        let wood_ = fire::wood(
            &tyre,
            drop.most_useful,
            FuelMoisture::OfDry(Percent::from_paper(20.0).unwrap()),
        )
        .unwrap();
        let mut said = vec![
            stick(over.stick(), style()),
            drop_on(&drop, style()),
            by_handbook(&drop, style()),
            window(&window_, style()),
        ];
        said.extend(leave_at(&window_));
        said.push(wood(&wood_, style()));
        said.push(colours(drop.at));
        said.join("\n")
    }

    #[test]
    fn the_heat_is_told_stick_first() {
        insta::assert_snapshot!(told(20.0, 30.0), @r"
        Hot-gauge stick: 1356 mm. When it turns freely in the hot tyre, the tyre is large enough.
        Drop it on at about 600 °C (± 50 °C: trust the stick before the figure).
        Iron grows faster the hotter it is. With the one coefficient of a handbook, which holds near 100 °C, it would have to be 750 °C (6.48 millionths for each °F, W. H. Dooley) or 710 °C (12.2 for each K). Above about 750 °C it grows no further: more heat only burns the sole.
        Count on 140 s after the carry before it touches, in wind; in still air it may be 690 s from the fire.
        To be hot enough still after the carry, take it out at about 690 °C.
        About 11 kg of dry wood for this tyre (6 to 22: open fires differ); several in one fire take less than as many fires.
        Its colour then: dull red. The charts differ by 100 °C and more, and daylight hides the first reds.
        ");
    }

    #[test]
    fn too_little_time_is_told_as_such() {
        insta::assert_snapshot!(told(26.0, 200.0), @r"
        Hot-gauge stick: 1356 mm. When it turns freely in the hot tyre, the tyre is large enough.
        Drop it on at about 690 °C (± 50 °C: trust the stick before the figure).
        Iron grows faster the hotter it is. With the one coefficient of a handbook, which holds near 100 °C, it would have to be 870 °C (6.48 millionths for each °F, W. H. Dooley) or 830 °C (12.2 for each K). Above about 750 °C it grows no further: more heat only burns the sole.
        Do not try: in wind only 0 s are left after the carry before it touches. Carry it less far, take it out hotter, or take less draw.
        About 11 kg of dry wood for this tyre (6 to 22: open fires differ); several in one fire take less than as many fires.
        Its colour then: dull red. The charts differ by 100 °C and more, and daylight hides the first reds.
        ");
    }
}
