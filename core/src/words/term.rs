//! What kinds of vehicle, keeper, arm, rim, tyre, grade and standing are called, as labels without
//! an article or a full stop.

use super::style::Style;
use crate::diagnosis::{Grade, Standing};
use crate::wheel::{Arm, Keeper, Rim, Size, Tyre, VehicleKind};

/// A kind of vehicle.
#[must_use]
pub fn vehicle_kind(kind: VehicleKind, style: Style) -> &'static str {
    match kind {
        VehicleKind::Cart => "cart",
        VehicleKind::HandCart => "hand cart",
        VehicleKind::Trap => "trap or gig",
        VehicleKind::Waggon => style.terms.waggon,
        VehicleKind::Carriage => "carriage",
        VehicleKind::Barrow => "barrow",
        VehicleKind::LooseWheel => "wheel without its cart",
    }
}

/// What keeps the wheel on its arm.
#[must_use]
pub fn keeper(keeper: Keeper, style: Style) -> &'static str {
    match keeper {
        Keeper::LinchPin => style.terms.linch_pin,
        Keeper::Nut => "nut on the arm",
        Keeper::Collinge => "Collinge axle, two nuts and a cap",
        Keeper::Mail => "mail axle, plate and three bolts",
    }
}

/// What the wheel turns on.
#[must_use]
pub fn arm(arm: Arm) -> &'static str {
    match arm {
        Arm::Wood => "wooden arm",
        Arm::Iron => "iron arm",
    }
}

/// How the rim is made.
#[must_use]
pub fn rim(rim: Rim, style: Style) -> String {
    match rim {
        Rim::Sawn => format!("sawn {}s", style.terms.felloe),
        Rim::Bent => "bent rim".to_owned(),
    }
}

/// What the wheel runs on.
#[must_use]
pub fn tyre(tyre: Tyre, style: Style) -> String {
    let word = style.terms.tyre;
    match tyre {
        Tyre::Hoop => format!("hoop {word}, shrunk on"),
        Tyre::Strakes => "strakes, nailed on".to_owned(),
        Tyre::Rubber => format!("rubber {word} in a channel"),
        Tyre::Bare => format!("bare wood, no {word}"),
    }
}

/// A size of a wheel.
#[must_use]
pub fn size(size: Size, style: Style) -> String {
    style.fill(match size {
        Size::Height => "height over the {sole}",
        Size::Dish => "dish as built",
        Size::TyreWidth => "{tyre} width",
        Size::TyreThickness => "{tyre} thickness as new",
        Size::FelloeDepth => "{felloe} depth",
        Size::SpokeDepth => "spoke depth",
        Size::BoxLength => "{wheel_box} length",
    })
}

/// How bad a finding is.
#[must_use]
pub fn grade(grade: Grade) -> &'static str {
    grade.proposes().map_or("note", standing)
}

/// What a wheel may still be used for.
#[must_use]
pub fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::NoFaultFound => "no fault found",
        Standing::LightWorkOnly => "light work only",
        Standing::NotJudged => "not judged",
        Standing::KeepEmpty => "keep empty",
        Standing::NotOnThisWheel => "not on this wheel",
    }
}

#[cfg(test)]
mod tests {
    use super::{arm, grade, keeper, rim, size, standing, tyre, vehicle_kind};
    use crate::diagnosis::{Grade, Standing};
    use crate::wheel::{Arm, Keeper, Rim, Size, Tyre, VehicleKind};
    use crate::words::sample::style;

    #[test]
    fn everything_has_a_name() {
        let grades = [
            Grade::Note,
            Grade::LightWorkOnly,
            Grade::KeepEmpty,
            Grade::NotOnThisWheel,
        ];
        let standings = [
            Standing::NoFaultFound,
            Standing::LightWorkOnly,
            Standing::NotJudged,
            Standing::KeepEmpty,
            Standing::NotOnThisWheel,
        ];
        let table = [
            VehicleKind::ALL
                .map(|kind| vehicle_kind(kind, style()))
                .join(", "),
            Keeper::ALL.map(|it| keeper(it, style())).join(" / "),
            Arm::ALL.map(arm).join(" / "),
            Rim::ALL.map(|it| rim(it, style())).join(" / "),
            Tyre::ALL.map(|it| tyre(it, style())).join(" / "),
            Size::ALL.map(|it| size(it, style())).join(" / "),
            grades.map(grade).join(", "),
            standings.map(standing).join(", "),
        ];
        insta::assert_snapshot!(table.join("\n"), @r"
        cart, waggon, trap or gig, carriage, hand cart, barrow, wheel without its cart
        linch pin / nut on the arm / Collinge axle, two nuts and a cap / mail axle, plate and three bolts
        wooden arm / iron arm
        sawn felloes / bent rim
        hoop tyre, shrunk on / strakes, nailed on / rubber tyre in a channel / bare wood, no tyre
        height over the sole / dish as built / tyre width / tyre thickness as new / felloe depth / spoke depth / box length
        note, light work only, keep empty, not on this wheel
        no fault found, light work only, not judged, keep empty, not on this wheel
        ");
    }
}
