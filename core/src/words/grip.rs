//! What a tyre does to a wheel, in words: lengths first, then what gives, then the grip as an order of size.

use super::style::Style;
use super::timber::moisture;
use super::tyring::hot;
use super::unmarked;
use crate::mechanics::{After, Assumption, Cooled, FitRefusal, Fitting, Gives, Sheet};
use crate::quantity::force::in_newtons;
use crate::quantity::length::{millimetres, to_paper_mm};
use crate::quantity::{Band, Force, Length, decimal};

/// What a tonne weighs in newtons.
const TONNE_N: f64 = 9807.0;

/// What a draw comes to in lengths: how much of it shuts the joints and how much is left to grip.
#[must_use]
pub fn nip(fitting: &Fitting, style: Style) -> String {
    let (draw, joints) = (fitting.draw.0, fitting.joints);
    let left = style.size(draw - joints);
    let said = if to_paper_mm(joints) > 0.0 {
        format!(
            "Of {} {{draw}} round, {} shut the joints and {left} are left to grip.",
            style.size(draw),
            style.size(joints)
        )
    } else {
        format!("The joints are shut: all {left} of {{draw}} are left to grip.")
    };
    style.fill(&said)
}

/// What no question asks of a wheel, and how it is taken in the reckoning.
#[must_use]
pub fn not_asked(style: Style) -> String {
    style.fill("Not asked, and taken as is common where nothing else is said: {felloe}s as wide as the {tyre}, spokes 7/10 as wide as deep, a {nave} of 2/9 of the height; {feet} that hold; elm {nave}, oak spokes, ash {felloe}s; iron that nobody has told apart.")
}

/// What is pressed hardest, and how hard.
#[must_use]
pub fn gives(sheet: &Sheet, style: Style) -> String {
    let (part, ratio) = sheet.middle.pressed.worst();
    let (low, high) = (tenths(sheet.worst.low), tenths(sheet.worst.high));
    let said = if ratio > 1.0 {
        format!(
            "What gives first: {}. It is pressed to {} times what it bears ({low} to {high}).",
            part_gives(part),
            tenths(ratio)
        )
    } else {
        format!(
            "Nothing gives. Hardest pressed {}: to {} of what it bears ({low} to {high}).",
            part_name(part),
            tenths(ratio)
        )
    };
    style.fill(&said)
}

/// The grip and how far what nobody measures moves it.
#[must_use]
pub fn grip(sheet: &Sheet, style: Style) -> String {
    let said = format!(
        "Cold, the {{tyre}} pulls with {}. What moves this most: {}.",
        band(&sheet.grip),
        assumption(sheet.leading.widest())
    );
    style.fill(&said)
}

/// How far the doubt of measuring alone moves the grip.
#[must_use]
pub fn measured(sheet: &Sheet, style: Style) -> String {
    let [low, high] = sheet.measured.map(tonnes);
    let said = if low == high {
        format!(
            "The doubt of the measured {{draw}} hardly moves it: {}.",
            weight(low)
        )
    } else {
        format!(
            "The doubt of the measured {{draw}} alone puts it anywhere from {low} to {}.",
            weight(high)
        )
    };
    style.fill(&said)
}

/// What a spoke carries.
#[must_use]
pub fn spokes(sheet: &Sheet) -> String {
    if in_newtons(sheet.middle.spoke) > 0.0 {
        format!("Each spoke is pressed with {}.", band(&sheet.spoke))
    } else {
        "The spokes bear nothing: their shoulders do not come home.".to_owned()
    }
}

/// What comes to the dish, where anything does.
#[must_use]
pub fn dish(sheet: &Sheet, style: Style) -> Option<String> {
    let Band { low, middle, high } = sheet.dish;
    let most = if high.abs() > low.abs() { high } else { low };
    if to_paper_mm(most).abs() < 0.25 {
        return None;
    }
    let least = if high.abs() > low.abs() { low } else { high };
    let way = if to_paper_mm(middle) < 0.0 {
        "further back"
    } else {
        "more"
    };
    let [least, middle, most] = [least, middle, most].map(|it| rough(it.abs(), style));
    Some(format!("About {middle} {way} dish ({least} to {most})."))
}

/// What the wheel loses for good, where anything is lost.
#[must_use]
pub fn lost(sheet: &Sheet, style: Style) -> Vec<String> {
    let (stretched, sunk) = (sheet.middle.stretched, sheet.middle.sunk);
    let mut said = Vec::new();
    if to_paper_mm(stretched) > 0.5 {
        let stretched = rough(stretched, style);
        said.push(format!("About {stretched} of the {{draw}} only stretch the {{tyre}} for good: cold iron holds no more than this."));
    }
    if to_paper_mm(sunk) > 0.25 {
        let sunk = rough(sunk, style);
        said.push(format!(
            "The shoulders of the spokes sink in by about {sunk} for good."
        ));
    }
    if let Some(push) = sheet.middle.folds_at {
        let push = weight(tonnes(push));
        said.push(format!("With {{feet}} that hold so little a push of {push} from the side can put the wheel through the flat and inside out: make them fast first."));
    }
    said.iter().map(|it| style.fill(it)).collect()
}

/// How the grip comes while the tyre cools.
#[must_use]
pub fn cooling(cooled: &Cooled, style: Style) -> String {
    let cold = in_newtons(cooled.cold());
    let at = |share: f64| {
        let reached = |grip: &Force| in_newtons(*grip) > cold * share;
        let found = cooled.grip.iter().find(|(_, grip)| reached(grip));
        found.map(|(at, _)| hot(*at))
    };
    let (Some(touches), Some(half)) = (at(0.0), at(0.5)) else {
        return style
            .fill("The {tyre} never grips: cold it is no smaller than what is left of the wheel.");
    };
    let stretched = match to_paper_mm(cooled.stretched) {
        it if it > 0.5 => format!(
            " About {} of the {{draw}} go into stretching it while it is soft.",
            rough(cooled.stretched, style)
        ),
        _ => String::new(),
    };
    style.fill(&format!(
        "As it cools the {{tyre}} touches the {{sole}} at about {touches} and has half its grip at about {half}.{stretched}"
    ))
}

/// What time takes.
#[must_use]
pub fn after(after: &After, style: Style) -> String {
    let Band { low, middle, high } = after.left.tenths();
    let (reserve, iron) = (rough(after.reserve, style), rough(after.in_iron, style));
    let said = format!(
        "Pressed wood gives way: after some years about {middle} of 10 parts of the grip are left ({low} to {high}). New, the wheel may shrink by {reserve} round before the {{tyre}} is slack; the iron itself holds {iron} of that, and wood the rest."
    );
    style.fill(&said)
}

/// Why a fit is not reckoned.
#[must_use]
pub fn refusal(refusal: &FitRefusal, style: Style) -> String {
    let size = |length: Length| style.size(length);
    let said = match refusal {
        FitRefusal::Size(refusal) => return refusal.to_string(),
        FitRefusal::Moisture(refusal) => return moisture(*refusal, style),
        FitRefusal::Spokes(0) => {
            "A wheel without spokes was given; what the rim would rest on is not known.".to_owned()
        }
        FitRefusal::Spokes(given) => format!("{given} spokes were given; a wheel has 3 to 64."),
        FitRefusal::Felloes(given) => format!("{given} {{felloe}}s were given; a rim has 1 to 32."),
        FitRefusal::NoRoom(left) if *left > millimetres(0.0) => format!(
            "Between {{nave}} and {{felloe}} only {} are left for the spokes; a wheel has 20 mm at the least.",
            size(*left)
        ),
        FitRefusal::NoRoom(_) => {
            "{nave} and {felloe}s together are larger than the wheel: no room is left for spokes."
                .to_owned()
        }
        FitRefusal::DishBeyondSpokes { dish, spokes } => format!(
            "A dish of {} was given with spokes of {}; up to 7/10 of their length can be reckoned.",
            size(*dish),
            size(*spokes)
        ),
        FitRefusal::TyreNotSmaller(draw) => {
            let by = -draw.0;
            if to_paper_mm(by) > 0.0 {
                format!(
                    "The {{tyre}} is larger round than the wheel by {}: nothing would hold it.",
                    size(by)
                )
            } else {
                "The {tyre} is no smaller round than the wheel: nothing would hold it.".to_owned()
            }
        }
        FitRefusal::DrawTooGreat { draw, most } => format!(
            "A {{draw}} of {} was given; on this wheel up to {} can be reckoned, and heat opens a {{tyre}} by half of that.",
            size(draw.0),
            size(most.0)
        ),
        FitRefusal::JointsWiderThanDraw { joints, draw } => format!(
            "The joints add up to {} and the {{draw}} is {}: the rim would never shut, and nothing is left to grip.",
            size(*joints),
            size(draw.0)
        ),
    };
    super::capital(&style.fill(&format!("{said} Nothing was changed.")))
}

/// What is assumed, as it ends a sentence.
#[must_use]
pub fn assumption(assumption: Assumption) -> &'static str {
    match assumption {
        Assumption::NaveGrain => "how hard the {nave} is across its grain",
        Assumption::Seats => "how much of each spoke bears on its shoulders",
        Assumption::RimStiffness => "how stiff the {felloe}s are",
        Assumption::RimStrength => "what the ends of the {felloe}s bear",
        Assumption::Crushed => "what wood still takes on once it is crushed",
        Assumption::Joints => "how much of the joint gaps really shuts",
        Assumption::Iron => "when the iron begins to stretch",
        Assumption::Feet => "how firmly the {feet} stand",
        Assumption::Shrinkage => "how much this timber moves with its moisture",
        Assumption::Following => "how far the timber follows the air",
    }
}

/// A part as it gives.
pub(super) fn part_gives(part: Gives) -> &'static str {
    match part {
        Gives::Tyre => "the {tyre} stretches for good",
        Gives::Nave => "the shoulders of the spokes sink into the {nave}",
        Gives::Belly => "the shoulders of the spokes sink into the {felloe}s",
        Gives::Spokes => "the spokes crush",
        Gives::Joints => "the ends of the {felloe}s crush at the joints",
        Gives::Sole => "the {sole} crushes under the {tyre}",
        Gives::Feet => "the spokes bend at their {feet}",
    }
}

fn part_name(part: Gives) -> &'static str {
    match part {
        Gives::Tyre => "is the {tyre}",
        Gives::Nave => "is the {nave} under the shoulders",
        Gives::Belly => "are the {felloe}s under the shoulders",
        Gives::Spokes => "are the spokes",
        Gives::Joints => "are the ends of the {felloe}s",
        Gives::Sole => "is the {sole}",
        Gives::Feet => "are the {feet} of the spokes",
    }
}

/// A force as an order of size: whole tonnes, since no finer than 10 kN means anything.
fn tonnes(force: Force) -> u32 {
    (in_newtons(force).max(0.0) / TONNE_N).round() as u32
}

fn weight(tonnes: u32) -> String {
    match tonnes {
        0 => "less than a tonne".to_owned(),
        1 => "1 tonne".to_owned(),
        many => format!("{many} tonnes"),
    }
}

/// A force with its band: `about 14 tonnes (9 to 17)`.
pub(super) fn band(force: &Band<Force>) -> String {
    let (low, middle, high) = (tonnes(force.low), tonnes(force.middle), tonnes(force.high));
    match (middle, high) {
        (0, 0) => weight(0),
        _ if low == high => format!("about {}", weight(middle)),
        (0, _) => format!("less than a tonne ({low} to {high})"),
        _ => format!("about {} ({low} to {high})", weight(middle)),
    }
}

/// A length that is reckoned and not measured: no finer than half a millimetre, and never marked as inexact.
pub(super) fn rough(length: Length, style: Style) -> String {
    let said = style.size(halves(length));
    unmarked(&said).to_owned()
}

/// A length no finer than half a millimetre.
pub(super) fn halves(length: Length) -> Length {
    millimetres((to_paper_mm(length) * 2.0).round() / 2.0)
}

fn tenths(ratio: f64) -> String {
    decimal(ratio, 1)
}

impl Band<f64> {
    /// Each in whole tenths, written out.
    fn tenths(self) -> Band<String> {
        let of = |v: f64| decimal(v * 10.0, 0);
        Band {
            low: of(self.low),
            middle: of(self.middle),
            high: of(self.high),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::moisture::MoistureRefusal;
    use crate::mechanics::sample::{cart, fitting};
    use crate::mechanics::{after as left, sheet};
    use crate::quantity::LengthRange;
    use crate::quantity::circumference::Draw;
    use crate::words::sample::{american, style};

    fn told(draw: f64, joints: f64, style: Style) -> String {
        let (build, fitting) = (cart(), fitting(draw, joints));
        let sheet = sheet(&build, &fitting).unwrap();
        let mut said = vec![
            nip(&fitting, style),
            gives(&sheet, style),
            grip(&sheet, style),
            measured(&sheet, style),
            spokes(&sheet),
        ];
        said.extend(dish(&sheet, style));
        said.extend(lost(&sheet, style));
        said.push(after(&left(&build, &fitting).unwrap(), style));
        said.join("\n")
    }

    #[test]
    fn a_fit_is_told_lengths_first() {
        insta::assert_snapshot!(told(20.0, 6.0, style()), @r"
        Of 20 mm draw round, 6 mm shut the joints and 14 mm are left to grip.
        What gives first: the shoulders of the spokes sink into the nave. It is pressed to 1.3 times what it bears (1.2 to 1.6).
        Cold, the tyre pulls with about 13 tonnes (10 to 16). What moves this most: how stiff the felloes are.
        The doubt of the measured draw alone puts it anywhere from 11 to 14 tonnes.
        Each spoke is pressed with about 1 tonne (0 to 2).
        About 2 mm more dish (0 mm to 7 mm).
        The shoulders of the spokes sink in by about 2 mm for good.
        Pressed wood gives way: after some years about 6 of 10 parts of the grip are left (4 to 7). New, the wheel may shrink by 12.5 mm round before the tyre is slack; the iron itself holds 2.5 mm of that, and wood the rest.
        ");
        insta::assert_snapshot!(told(3.0, 0.0, style()), @r"
        The joints are shut: all 3 mm of draw are left to grip.
        Nothing gives. Hardest pressed is the nave under the shoulders: to 0.5 of what it bears (0.3 to 1).
        Cold, the tyre pulls with about 3 tonnes (2 to 4). What moves this most: how stiff the felloes are.
        The doubt of the measured draw alone puts it anywhere from 0 to 6 tonnes.
        Each spoke is pressed with less than a tonne (0 to 1).
        About 1 mm more dish (0 mm to 2 mm).
        Pressed wood gives way: after some years about 6 of 10 parts of the grip are left (4 to 7). New, the wheel may shrink by 3 mm round before the tyre is slack; the iron itself holds 0.5 mm of that, and wood the rest.
        ");
        insta::assert_snapshot!(told(60.0, 0.0, american()), @r"
        The joints are shut: all ≈ 2 3/8 in of draft are left to grip.
        What gives first: the shoulders of the spokes sink into the hub. It is pressed to 2.1 times what it bears (1.3 to 4.7).
        Cold, the tire pulls with about 19 tonnes (11 to 27). What moves this most: what wood still takes on once it is crushed.
        The doubt of the measured draft alone puts it anywhere from 19 to 20 tonnes.
        Each spoke is pressed with about 2 tonnes (1 to 3).
        About 1/8 in more dish (0 in to 1/2 in).
        The shoulders of the spokes sink in by about 5/16 in for good.
        Pressed wood gives way: after some years about 6 of 10 parts of the grip are left (4 to 7). New, the wheel may shrink by 3/4 in round before the tire is slack; the iron itself holds 3/16 in of that, and wood the rest.
        ");
    }

    #[test]
    fn the_grip_that_comes_with_cooling_is_told() {
        use crate::mechanics::{Build, Corner, cooled};
        use crate::quantity::circumference::Diameter;
        let told = |build: &Build, draw| {
            let it = cooled(build, &fitting(draw, 0.0), &Corner::default()).unwrap();
            cooling(&it, style())
        };
        insta::assert_snapshot!(told(&cart(), 20.0), @"As it cools the tyre touches the sole at about 360 °C and has half its grip at about 240 °C.");
        let stiff = Build {
            felloe_depth: millimetres(250.0),
            felloe_width: millimetres(400.0),
            rim: crate::wheel::Rim::Bent,
            nave: Diameter(millimetres(200.0)),
            ..cart()
        };
        insta::assert_snapshot!(told(&stiff, 32.0), @"As it cools the tyre touches the sole at about 540 °C and has half its grip at about 440 °C. About 25.5 mm of the draw go into stretching it while it is soft.");
    }

    #[test]
    fn what_is_not_asked_is_said() {
        insta::assert_snapshot!(not_asked(american()), @"Not asked, and taken as is common where nothing else is said: felloes as wide as the tire, spokes 7/10 as wide as deep, a hub of 2/9 of the height; feet that hold; elm hub, oak spokes, ash felloes; iron that nobody has told apart.");
    }

    #[test]
    fn every_refusal_has_its_sentence() {
        let mm = millimetres;
        let rows = [
            FitRefusal::Size(LengthRange::TyreThickness.check(mm(0.0)).unwrap_err()),
            FitRefusal::Spokes(0),
            FitRefusal::Spokes(65),
            FitRefusal::Felloes(0),
            FitRefusal::NoRoom(mm(-20.0)),
            FitRefusal::NoRoom(mm(12.0)),
            FitRefusal::DishBeyondSpokes {
                dish: mm(290.0),
                spokes: mm(300.0),
            },
            FitRefusal::TyreNotSmaller(Draw(mm(-3.0))),
            FitRefusal::TyreNotSmaller(Draw(mm(0.0))),
            FitRefusal::DrawTooGreat {
                draw: Draw(mm(200.0)),
                most: Draw(mm(93.3)),
            },
            FitRefusal::JointsWiderThanDraw {
                joints: mm(28.0),
                draw: Draw(mm(20.0)),
            },
            FitRefusal::Moisture(MoistureRefusal::NoMoisture(200.0)),
        ];
        insta::assert_snapshot!(rows.map(|it| refusal(&it, style())).join("\n"), @r"
        The tyre thickness was given as 0 mm (0 in), and it may be from 1 mm (≈ 1/32 in) to 80 mm (≈ 3 5/32 in); nothing was changed.
        A wheel without spokes was given; what the rim would rest on is not known. Nothing was changed.
        65 spokes were given; a wheel has 3 to 64. Nothing was changed.
        0 felloes were given; a rim has 1 to 32. Nothing was changed.
        Nave and felloes together are larger than the wheel: no room is left for spokes. Nothing was changed.
        Between nave and felloe only 12 mm are left for the spokes; a wheel has 20 mm at the least. Nothing was changed.
        A dish of 290 mm was given with spokes of 300 mm; up to 7/10 of their length can be reckoned. Nothing was changed.
        The tyre is larger round than the wheel by 3 mm: nothing would hold it. Nothing was changed.
        The tyre is no smaller round than the wheel: nothing would hold it. Nothing was changed.
        A draw of 200 mm was given; on this wheel up to 93.3 mm can be reckoned, and heat opens a tyre by half of that. Nothing was changed.
        The joints add up to 28 mm and the draw is 20 mm: the rim would never shut, and nothing is left to grip. Nothing was changed.
        A moisture of 200 % was given, and the wood of a wheel has from 0 to 60 % of its dry weight; a meter for firewood that counts the wet weight reads less. Nothing was changed.
        ");
    }

    #[test]
    fn every_part_and_assumption_has_words() {
        let parts = Gives::ALL.map(|it| format!("{} / {}", part_gives(it), part_name(it)));
        insta::assert_snapshot!(american().fill(&parts.join("\n")), @r"
        the tire stretches for good / is the tire
        the shoulders of the spokes sink into the hub / is the hub under the shoulders
        the shoulders of the spokes sink into the felloes / are the felloes under the shoulders
        the spokes crush / are the spokes
        the ends of the felloes crush at the joints / are the ends of the felloes
        the tread crushes under the tire / is the tread
        the spokes bend at their feet / are the feet of the spokes
        ");
        insta::assert_snapshot!(american().fill(&Assumption::ALL.map(assumption).join("\n")), @r"
        how hard the hub is across its grain
        how much of each spoke bears on its shoulders
        how stiff the felloes are
        what the ends of the felloes bear
        what wood still takes on once it is crushed
        how much of the joint gaps really shuts
        when the iron begins to stretch
        how firmly the feet stand
        how much this timber moves with its moisture
        how far the timber follows the air
        ");
    }

    #[test]
    fn a_force_is_told_in_whole_tonnes() {
        use crate::quantity::force::newtons;
        let of = |low, middle, high| {
            band(&Band {
                low: newtons(low),
                middle: newtons(middle),
                high: newtons(high),
            })
        };
        insta::assert_snapshot!([of(0.0, 0.0, 0.0), of(0.0, 3e3, 4e4), of(9e4, 13.7e4, 17.4e4), of(9.5e3, 9.8e3, 1e4)].join("\n"), @r"
        less than a tonne
        less than a tonne (0 to 4)
        about 14 tonnes (9 to 18)
        about 1 tonne
        ");
    }
}
