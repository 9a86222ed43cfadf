//! Timbers by name, how hard their side grain is, and where each number about them was read.

use super::style::Style;
use crate::material::moisture::MoistureRefusal;
use crate::material::{Grain, Source, Species, Timber};
use crate::quantity::decimal;

/// A timber: `white ash`.
#[must_use]
pub fn species(species: Species) -> String {
    // The codes are the names.
    let name = species.code().replace('-', " ");
    let proper = ["american", "european", "english"];
    match proper.into_iter().find(|word| name.starts_with(word)) {
        Some(_) => super::capital(&name),
        None => name,
    }
}

/// How hard the side grain of an elm is.
#[must_use]
pub fn grain(grain: Grain) -> &'static str {
    match grain {
        Grain::Soft => "soft: a thumb-nail marks it across the grain, as American elm",
        Grain::Medium => "medium",
        Grain::Hard => "hard: it turns a nail, as rock elm",
    }
}

/// Where a number was read.
#[must_use]
pub fn source(source: Source) -> &'static str {
    match source {
        Source::HandbookShrinkage => "Wood Handbook (FPL-GTR-190, 2010), Table 4-3",
        Source::HandbookStrength => "Wood Handbook (FPL-GTR-190, 2010), Table 5-3",
        Source::HandbookRatios => "Wood Handbook (FPL-GTR-190, 2010), Table 5-1",
        Source::HandbookVariation => "Wood Handbook (FPL-GTR-190, 2010), Table 5-6, from memory",
        Source::HandbookMovement => "Wood Handbook (FPL-GTR-190, 2010), Table 13-5",
        Source::WoodDatabase => "The Wood Database, wood-database.com",
        Source::EuropeanWood => "European Wood, europeanwood.org",
        Source::Traders => "sheets of timber traders (frey-amon.at, transglobaltimbers, espen.de)",
        Source::ToolBox => "The Engineering ToolBox, engineeringtoolbox.com",
        Source::Lavers => "G. M. Lavers, The strength properties of timbers (1983), from memory",
        Source::Assumed => "what was not found printed is assumed between timbers that are near it",
    }
}

/// Where the numbers of a timber come from.
#[must_use]
pub fn sources(timber: Timber) -> String {
    let read: Vec<&str> = timber.sources().iter().map(|it| source(*it)).collect();
    format!(
        "{}: {}.",
        super::capital(&species(timber.species)),
        read.join("; ")
    )
}

/// Why a moisture is not taken.
#[must_use]
pub fn moisture(refusal: MoistureRefusal, style: Style) -> String {
    let said = match refusal {
        MoistureRefusal::NoMoisture(given) if given.is_nan() => "What was given for a moisture is no number; the wood of a wheel has from 0 to 60 % of its dry weight.".to_owned(),
        MoistureRefusal::NoMoisture(given) => format!(
            "A moisture of {} % was given, and the wood of a wheel has from 0 to 60 % of its dry weight; a meter for firewood that counts the wet weight reads less.",
            number(given)
        ),
        MoistureRefusal::TooDamp(given) => format!(
            "A humidity of {} % was given for a month, and up to 95 % it is known what it makes of wood.",
            decimal(given.to_paper(), 1)
        ),
        MoistureRefusal::OutOfRange(given) => format!(
            "An air of {} °C was given for a month, and from −90 to 93 °C it can be reckoned.",
            number(given)
        ),
    };
    style.fill(&format!("{said} Nothing was changed."))
}

/// A number that was typed, as far as it is one.
fn number(v: f64) -> String {
    if v.abs() < 1e9 {
        decimal(v, 1).replace('-', "−")
    } else {
        "more than a thousand million".to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Percent;
    use crate::words::sample::style;

    #[test]
    fn every_timber_is_named() {
        insta::assert_snapshot!(Species::ALL.map(species).join(", "), @"white ash, European ash, American elm, rock elm, English elm, wych elm, white oak, red oak, English oak, American beech, European beech, hickory");
        insta::assert_snapshot!(Grain::ALL.map(grain).join(" / "), @"soft: a thumb-nail marks it across the grain, as American elm / medium / hard: it turns a nail, as rock elm");
    }

    #[test]
    fn a_timber_says_where_its_numbers_come_from() {
        insta::assert_snapshot!(sources(Species::WhiteAsh.into()), @"White ash: Wood Handbook (FPL-GTR-190, 2010), Table 4-3; Wood Handbook (FPL-GTR-190, 2010), Table 13-5; Wood Handbook (FPL-GTR-190, 2010), Table 5-3; Wood Handbook (FPL-GTR-190, 2010), Table 5-1; Wood Handbook (FPL-GTR-190, 2010), Table 5-6, from memory.");
        insta::assert_snapshot!(sources(Species::EnglishElm.into()), @"English elm: sheets of timber traders (frey-amon.at, transglobaltimbers, espen.de); The Engineering ToolBox, engineeringtoolbox.com; The Wood Database, wood-database.com; G. M. Lavers, The strength properties of timbers (1983), from memory; Wood Handbook (FPL-GTR-190, 2010), Table 5-6, from memory; what was not found printed is assumed between timbers that are near it.");
    }

    #[test]
    fn every_refusal_of_a_moisture_has_its_sentence() {
        let rows = [
            MoistureRefusal::NoMoisture(200.0),
            MoistureRefusal::NoMoisture(f64::NAN),
            MoistureRefusal::TooDamp(Percent::whole(99)),
            MoistureRefusal::OutOfRange(-300.0),
        ];
        insta::assert_snapshot!(rows.map(|it| moisture(it, style())).join("\n"), @r"
        A moisture of 200 % was given, and the wood of a wheel has from 0 to 60 % of its dry weight; a meter for firewood that counts the wet weight reads less. Nothing was changed.
        What was given for a moisture is no number; the wood of a wheel has from 0 to 60 % of its dry weight. Nothing was changed.
        A humidity of 99 % was given for a month, and up to 95 % it is known what it makes of wood. Nothing was changed.
        An air of −300 °C was given for a month, and from −90 to 93 °C it can be reckoned. Nothing was changed.
        ");
    }
}
