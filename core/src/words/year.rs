//! A tyre through the year, in words: the driest and the wettest month, and the draw that suits both.

use super::grip::{assumption, band, halves, part_gives, rough};
use super::style::Style;
use super::when::MONTHS;
use crate::mechanics::{Harm, Helps, Month, Range, Season, Stand, StandSource};
use crate::quantity::circumference::Draw;
use crate::quantity::decimal;
use crate::quantity::force::in_newtons;
use crate::quantity::length::{millimetres, to_paper_mm};

/// Where a cart stands.
#[must_use]
pub fn stand(stand: Stand) -> &'static str {
    match stand {
        Stand::OpenShed => "an open shed with a roof",
        Stand::ClosedBarn => "a closed barn without heating",
        Stand::HeatedHall => "a heated hall",
        Stand::SouthEngland => "out of the rain in the south of England",
        Stand::Portland => "out of the rain in Portland, Oregon",
        Stand::Phoenix => "out of the rain in Phoenix, Arizona",
    }
}

/// Where the months of such a place come from.
#[must_use]
pub fn stand_source(source: StandSource) -> &'static str {
    match source {
        StandSource::Din1052 => {
            "The mean and the span are those of DIN 1052-1 (1988); the run of the months is ours."
        }
        StandSource::Handbook => "Wood Handbook (FPL-GTR-190, 2010), Table 13-1, from memory.",
        StandSource::Typical => {
            "Typical air, made up from memory: put in the figures of a weather station near you."
        }
    }
}

/// The driest and the wettest month.
#[must_use]
pub fn ends(season: &Season, style: Style) -> String {
    let [dry, wet] = season.driest_and_wettest;
    let of = |word, month: usize| {
        let name = MONTHS.get(month).unwrap_or(&"");
        let told = season
            .months
            .get(month)
            .map_or(String::new(), |it| self::month(it, style));
        format!("{word} in {name}: {told}")
    };
    let said = format!(
        "{} {} What moves this most: {}.",
        of("Driest", dry),
        of("Wettest", wet),
        assumption(season.leading.widest())
    );
    style.fill(&said)
}

/// What one month does to the wheel.
#[must_use]
pub fn month(month: &Month, style: Style) -> String {
    let slack = halves(month.slack.middle);
    let off = halves(month.off.middle);
    let tyre = if to_paper_mm(slack) > 0.0 {
        format!("the {{tyre}} is slack by {} round", rough(slack, style))
    } else if in_newtons(month.grip.middle) > 0.0 {
        format!("the {{tyre}} pulls with {}", band(&month.grip))
    } else {
        "the {tyre} lies on without a pull".to_owned()
    };
    let spokes = if to_paper_mm(off) > 0.0 {
        format!("the shoulders stand off by {}", rough(off, style))
    } else {
        "the spokes bear".to_owned()
    };
    style.fill(&format!("{tyre}, and {spokes}."))
}

/// How much draw suits the year.
#[must_use]
pub fn range(range: &Range, style: Style) -> String {
    // Inwards, so that what is said lies in the range.
    let both = |[least, most]: [Draw; 2]| {
        let quarter = millimetres(0.25);
        let [least, most] = [least.0 + quarter, most.0 - quarter].map(|it| rough(it, style));
        if least == most {
            least
        } else {
            format!("{least} to {most}")
        }
    };
    let said = match (range.likely(), range.sure()) {
        (Some(_), Some(sure)) => format!(
            "A {{draw}} of {} grips in the driest month and spoils nothing in the wettest, whatever is assumed.",
            both(sure)
        ),
        (Some(likely), None) => format!(
            "With the middle of all that is assumed, a {{draw}} of {} grips in the driest month and spoils nothing in the wettest; no {{draw}} does for certain. More than that, and {}.",
            both(likely),
            harm(range.harm)
        ),
        (None, _) => none(range, style),
    };
    style.fill(&said)
}

fn none(range: &Range, style: Style) -> String {
    let size = |draw: Draw| rough(draw.0, style);
    match (range.least, range.most) {
        (Some(least), Some(most)) => format!(
            "No {{draw}} suits this year: to grip in the driest month it takes {}, and with more than {} in the wettest {}.",
            size(least),
            size(most),
            harm(range.harm)
        ),
        (None, _) => {
            "No {draw} suits this year: whatever is drawn, the {tyre} is slack in the driest month."
                .to_owned()
        }
        (_, None) => format!(
            "No {{draw}} suits this year: in the wettest month {} as soon as the joints are shut.",
            harm(range.harm)
        ),
    }
}

/// What would make a range where there is none.
#[must_use]
pub fn helps(helps: Helps, style: Style) -> String {
    let said = match helps {
        Helps::Steadier(points) => format!(
            "A steadier place would help: one where the air swings thin wood by no more than {} points of moisture in the year, or paint that keeps the swing out.",
            decimal(points, 1)
        ),
        Helps::Thinner(thickness) => format!(
            "A thinner {{tyre}} gives more and would help: {} thick.",
            rough(thickness, style)
        ),
        Helps::Neither => "Neither a steadier place nor a thinner {tyre} would help: fit it when the wood is nearer to what it comes to there, or mend the rim first.".to_owned(),
    };
    style.fill(&said)
}

fn harm(harm: Harm) -> String {
    match harm {
        Harm::Part(part) => part_gives(part).to_owned(),
        Harm::Sinks => "the shoulders of the spokes sink in too far".to_owned(),
        Harm::Dishes => "the wheel gains too much dish".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::MoistureContent;
    use crate::mechanics::sample::{cart, fitting};
    use crate::mechanics::{Fitting, Gives, season};
    use crate::words::sample::{american, style};

    fn told(moisture: f64, draw: f64, joints: f64, place: Stand, style: Style) -> String {
        let moisture = MoistureContent::from_percent(moisture).unwrap();
        let fitting = Fitting {
            moisture,
            ..fitting(draw, joints)
        };
        let it = season(&cart(), &fitting, &place.year()).unwrap();
        let helped = it.helps.map(|it| helps(it, style)).unwrap_or_default();
        format!(
            "{}\n{}\n{helped}",
            ends(&it, style),
            range(&it.range, style)
        )
    }

    #[test]
    fn a_year_is_told_by_its_ends_and_its_range() {
        insta::assert_snapshot!(told(14.0, 20.0, 6.0, Stand::OpenShed, style()), @r"
        Driest in July: the tyre pulls with about 4 tonnes (0 to 11), and the shoulders stand off by 0.5 mm. Wettest in January: the tyre pulls with about 13 tonnes (9 to 17), and the spokes bear. What moves this most: what the ends of the felloes bear.
        With the middle of all that is assumed, a draw of 8.5 mm to 13 mm grips in the driest month and spoils nothing in the wettest; no draw does for certain. More than that, and the ends of the felloes crush at the joints.
        ");
        insta::assert_snapshot!(told(14.0, 20.0, 14.0, Stand::ClosedBarn, american()), @r"
        Driest in July: the tire is slack by 1/16 in round, and the shoulders stand off by 1/16 in. Wettest in January: the tire pulls with about 7 tonnes (4 to 12), and the spokes bear. What moves this most: how much of the joint gaps really shuts.
        With the middle of all that is assumed, a draft of 7/8 in to 15/16 in grips in the driest month and spoils nothing in the wettest; no draft does for certain. More than that, and the shoulders of the spokes sink in too far.
        ");
        insta::assert_snapshot!(told(8.0, 12.0, 0.0, Stand::OpenShed, style()), @r"
        Driest in July: the tyre pulls with about 5 tonnes (0 to 13), and the spokes bear. Wettest in January: the tyre pulls with about 14 tonnes (9 to 19), and the spokes bear. What moves this most: what the ends of the felloes bear.
        No draw suits this year: in the wettest month the shoulders of the spokes sink in too far as soon as the joints are shut.
        Neither a steadier place nor a thinner tyre would help: fit it when the wood is nearer to what it comes to there, or mend the rim first.
        ");
        insta::assert_snapshot!(told(20.0, 8.0, 0.0, Stand::Phoenix, style()), @r"
        Driest in June: the tyre is slack by 15.5 mm round, and the shoulders stand off by 7.5 mm. Wettest in December: the tyre is slack by 9 mm round, and the shoulders stand off by 6 mm. What moves this most: how hard the nave is across its grain.
        No draw suits this year: whatever is drawn, the tyre is slack in the driest month.
        Neither a steadier place nor a thinner tyre would help: fit it when the wood is nearer to what it comes to there, or mend the rim first.
        ");
    }

    #[test]
    fn every_place_and_help_has_words() {
        let places = Stand::ALL.map(|it| format!("{}: {}", stand(it), stand_source(it.source())));
        insta::assert_snapshot!(places.join("\n"), @r"
        an open shed with a roof: The mean and the span are those of DIN 1052-1 (1988); the run of the months is ours.
        a closed barn without heating: The mean and the span are those of DIN 1052-1 (1988); the run of the months is ours.
        a heated hall: The mean and the span are those of DIN 1052-1 (1988); the run of the months is ours.
        out of the rain in the south of England: Typical air, made up from memory: put in the figures of a weather station near you.
        out of the rain in Portland, Oregon: Wood Handbook (FPL-GTR-190, 2010), Table 13-1, from memory.
        out of the rain in Phoenix, Arizona: Wood Handbook (FPL-GTR-190, 2010), Table 13-1, from memory.
        ");
        let rows = [
            Helps::Steadier(4.5),
            Helps::Thinner(millimetres(12.0)),
            Helps::Neither,
        ]
        .map(|it| helps(it, style()));
        insta::assert_snapshot!(rows.join("\n"), @r"
        A steadier place would help: one where the air swings thin wood by no more than 4.5 points of moisture in the year, or paint that keeps the swing out.
        A thinner tyre gives more and would help: 12 mm thick.
        Neither a steadier place nor a thinner tyre would help: fit it when the wood is nearer to what it comes to there, or mend the rim first.
        ");
        let rows = [Harm::Part(Gives::Joints), Harm::Sinks, Harm::Dishes].map(harm);
        insta::assert_snapshot!(style().fill(&rows.join("\n")), @r"
        the ends of the felloes crush at the joints
        the shoulders of the spokes sink in too far
        the wheel gains too much dish
        ");
    }
}
