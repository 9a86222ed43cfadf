//! How hot, for how long, with how much wood, and how little colour says.

use uom::si::mass::kilogram;
use uom::si::time::second;

use super::{about, hot, number, seconds};
use crate::quantity::circumference::Diameter;
use crate::quantity::{Band, Length, decimal};
use crate::tyring::hot::colour::Colour;
use crate::tyring::hot::window::LEAST;
use crate::tyring::hot::{DropOn, Verdict, Window};
use crate::wheel::Position;
use crate::words::list;
use crate::words::place::wheel_at;
use crate::words::style::Style;

/// The hot-gauge stick, which tells by hand what a temperature only guesses.
#[must_use]
pub fn stick(stick: Diameter, style: Style) -> String {
    style.fill(&format!(
        "Cut a stick {} long. When it goes through the hot {{tyre}} across its widest, the {{tyre}} is large enough.",
        about(stick.0, style)
    ))
}

/// How hot to drop it on.
#[must_use]
pub fn drop_on(drop: &DropOn) -> String {
    let least = drop.if_it_grows_least.map_or(
        "if its iron grows little, no heat may be enough".to_owned(),
        |at| format!("{} if its iron grows little", hot(at)),
    );
    format!("About {}, to 50 °C either way; {least}.", hot(drop.at))
}

/// How much it must grow, with the inputs.
#[must_use]
pub fn growth(stick: Diameter, cold: Diameter, style: Style) -> String {
    let percent = (stick.0 / cold.0).value * 100.0 - 100.0;
    style.fill(&format!(
        "It must grow from {} across to the stick's {}, which is the wheel with the room as it drops and whatever either is out of round: {} %. By EN 1993-1-2:2005, 3.4.1.1, {{tyre}}s of mild steel and, within its spread, of wrought iron do so at the heat above.",
        about(cold.0, style),
        about(stick.0, style),
        decimal(percent, 2)
    ))
}

/// Why one coefficient of a handbook asks for too much, with what it would ask for.
#[must_use]
pub fn by_handbook(drop: &DropOn, style: Style) -> String {
    let [wrought, steel] = drop.by_handbook.map(hot);
    style.fill(&format!(
        "One coefficient for every heat would ask for {steel} (mild steel) or {wrought} (wrought iron): a handbook gives it for a warm room, and hot iron grows more for each degree. Over {} the {{tyre}} grows no more.",
        hot(drop.most_useful)
    ))
}

/// In which order several tyres of one fire go on: thin iron is hot first and cold first (common practice, no source).
/// Nothing of a single one.
#[must_use]
pub fn order(tyres: &[(Position, Option<Length>)], style: Style) -> Option<String> {
    if tyres.len() < 2 {
        return None;
    }
    let unsaid: Vec<String> = tyres
        .iter()
        .filter(|(_, thick)| thick.is_none())
        .map(|(at, _)| wheel_at(*at))
        .collect();
    if !unsaid.is_empty() {
        return Some(style.fill(&format!(
            "Several {{tyre}}s in one fire: thin iron is hot first and cold first (common practice, no source). How thick it is was not said of {}.",
            list(&unsaid)
        )));
    }
    let mut by_iron: Vec<(Position, Length)> = tyres
        .iter()
        .filter_map(|(at, thick)| Some((*at, (*thick)?)))
        .collect();
    by_iron.sort_by(|(_, one), (_, other)| one.value.total_cmp(&other.value));
    let each = by_iron
        .iter()
        .map(|(at, thick)| format!("{} ({})", wheel_at(*at), about(*thick, style)));
    let each: Vec<String> = each.collect();
    Some(style.fill(&format!(
        "Several {{tyre}}s in one fire go on one at a time, thin iron first, for it is hot first and cold first (common practice, no source): {}. No wheel is begun before the last one lies and is quenched.",
        each.join(", then ")
    )))
}

/// How long there is.
#[must_use]
pub fn window(window: &Window, style: Style) -> String {
    let Band { low, high, .. } = window.until_it_touches;
    let [low, high, left] = [low, high, window.left].map(|time| seconds(time.get::<second>()));
    let said = match window.verdict {
        Verdict::Enough => format!(
            "It touches after {low} in wind and {high} at the longest: count on {left} once it has been carried."
        ),
        Verdict::DoNotTry => format!(
            "Do not try: after the carry {left} would be left in wind, and under {} is not enough. Make it hotter, carry it less far, or take less {{draw}}.",
            seconds(LEAST)
        ),
    };
    style.fill(&said)
}

/// How hot it must leave the fire, where there is an answer.
#[must_use]
pub fn leave_the_fire(window: &Window) -> Option<String> {
    let at = window.leave_the_fire_at?;
    Some(format!(
        "To be hot enough after the carry it leaves the fire at about {}.",
        hot(at)
    ))
}

/// The firewood for one tyre by itself.
#[must_use]
pub fn wood(wood: &Band<uom::si::f64::Mass>, style: Style) -> String {
    let [low, high] = [wood.low, wood.high].map(|it| it.get::<kilogram>().round());
    style.fill(&format!(
        "{} to {} kg of wood for one {{tyre}} on an open fire; several in one fire take less each.",
        number(low),
        number(high)
    ))
}

/// What the name of a colour says.
#[must_use]
pub fn colour(colour: Colour) -> String {
    let name = match colour {
        Colour::JustSeen => "a glow that can just be seen",
        Colour::DullRed => "dark or dull red",
        Colour::Cherry => "cherry",
        Colour::Orange => "orange",
    };
    let (low, high) = colour.says();
    format!("{name}: {} to {}", hot(low), hot(high))
}

/// What goes with every name of a colour.
pub const COLOUR_SAYS_LITTLE: &str = "The charts differ by up to 200 °C for one name, and daylight hides the first red: go by the stick, not by the colour.";

#[cfg(test)]
mod tests {
    use super::{by_handbook, colour, drop_on, growth, leave_the_fire, order, stick, window, wood};
    use crate::material::iron::Iron;
    use crate::quantity::Percent;
    use crate::quantity::circumference::{Circumference, Diameter};
    use crate::quantity::length::millimetres;
    use crate::quantity::temperature::celsius;
    use crate::tyring::hot::colour::Colour;
    use crate::tyring::hot::fire::{self, FuelMoisture};
    use crate::tyring::hot::window::Carry;
    use crate::tyring::hot::{HotTyre, Over, window as working};
    use crate::wheel::Position;
    use crate::words::sample::{american, style};
    use uom::si::f64::Time;
    use uom::si::time::second;

    fn sheet(draw: f64, carry: f64) -> Vec<String> {
        let wheel = Diameter(millimetres(1350.0)).round();
        let inside = Circumference(wheel.0 - millimetres(draw));
        let [width, thickness, oval] = [60.0, 16.0, 3.0].map(millimetres);
        let tyre = HotTyre::of(Iron::Steel, inside, width, thickness).unwrap();
        let over = Over::of(wheel, oval, oval, millimetres(3.0)).unwrap();
        let carry = Carry::of(celsius(10.0), None, Time::new::<second>(carry)).unwrap();
        let drop = over.drop_on(&tyre).unwrap();
        let time = working::window(&tyre, &over, &carry, drop.most_useful).unwrap();
        let dry = FuelMoisture::OfAll(Percent::whole(20));
        vec![
            stick(over.stick(), style()),
            drop_on(&drop),
            by_handbook(&drop, style()),
            window(&time, american()),
            leave_the_fire(&time).unwrap_or("-".to_owned()),
            wood(&fire::wood(&tyre, drop.at, dry).unwrap(), style()),
        ]
    }

    #[test]
    fn heat_is_said_after_the_stick() {
        insta::assert_snapshot!(sheet(16.0, 20.0).join("\n"), @r"
        Cut a stick 1357.5 mm long. When it goes through the hot tyre across its widest, the tyre is large enough.
        About 590 °C, to 50 °C either way; 620 °C if its iron grows little.
        One coefficient for every heat would ask for 700 °C (mild steel) or 730 °C (wrought iron): a handbook gives it for a warm room, and hot iron grows more for each degree. Over 750 °C the tyre grows no more.
        It touches after 3 min in wind and 12 min at the longest: count on 2.5 min once it has been carried.
        To be hot enough after the carry it leaves the fire at about 660 °C.
        5 to 15 kg of wood for one tyre on an open fire; several in one fire take less each.
        ");
        insta::assert_snapshot!(sheet(26.0, 90.0).join("\n"), @r"
        Cut a stick 1357.5 mm long. When it goes through the hot tyre across its widest, the tyre is large enough.
        About 730 °C, to 50 °C either way; if its iron grows little, no heat may be enough.
        One coefficient for every heat would ask for 890 °C (mild steel) or 930 °C (wrought iron): a handbook gives it for a warm room, and hot iron grows more for each degree. Over 750 °C the tyre grows no more.
        Do not try: after the carry 0 s would be left in wind, and under 60 s is not enough. Make it hotter, carry it less far, or take less draft.
        -
        6 to 21 kg of wood for one tyre on an open fire; several in one fire take less each.
        ");
    }

    #[test]
    fn colours_are_said_as_far_apart_as_they_are() {
        insta::assert_snapshot!(Colour::ALL.map(colour).join("\n"), @r"
        a glow that can just be seen: 430 °C to 590 °C
        dark or dull red: 590 °C to 810 °C
        cherry: 800 °C to 1000 °C
        orange: 980 °C to 1100 °C
        ");
    }

    #[test]
    fn thin_iron_goes_on_first() {
        let iron = |mm: f64| Some(millimetres(mm));
        let rows = [
            order(
                &[
                    (Position::NearFore, iron(19.0)),
                    (Position::OffFore, iron(12.7)),
                    (Position::NearHind, iron(16.0)),
                ],
                style(),
            ),
            order(
                &[(Position::Near, iron(19.0)), (Position::Off, None)],
                style(),
            ),
        ];
        let rows = rows.map(Option::unwrap);
        insta::assert_snapshot!(rows.join("\n"), @r"
        Several tyres in one fire go on one at a time, thin iron first, for it is hot first and cold first (common practice, no source): off fore wheel (12.5 mm), then near hind wheel (16 mm), then near fore wheel (19 mm). No wheel is begun before the last one lies and is quenched.
        Several tyres in one fire: thin iron is hot first and cold first (common practice, no source). How thick it is was not said of off wheel.
        ");
        assert_eq!(order(&[(Position::Only, iron(19.0))], style()), None);
    }

    #[test]
    fn the_growth_is_said_with_its_inputs() {
        let across = |mm| Diameter(millimetres(mm));
        insta::assert_snapshot!(growth(across(1352.5), across(1345.0), style()), @"It must grow from 1345 mm across to the stick's 1352.5 mm, which is the wheel with the room as it drops and whatever either is out of round: 0.56 %. By EN 1993-1-2:2005, 3.4.1.1, tyres of mild steel and, within its spread, of wrought iron do so at the heat above.");
    }
}
