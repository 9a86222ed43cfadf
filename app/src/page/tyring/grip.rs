//! What the tyre does to the wheel: what gives first, the grip as an order of size, the year. It is reckoned in three
//! slices, each a task of its own, so that no tap waits for it.

use std::sync::Arc;
use std::time::Duration;

use cartside_core::mechanics::{
    Cooled, Corner, Month, Season, Sheet, after, cooled, season, sheet as fit,
};
use cartside_core::quantity::force::in_newtons;
use cartside_core::quantity::{Force, decimal};
use cartside_core::words::{self, grip, year};
use leptos::prelude::*;

use super::Same;
use super::given::{Given, Said};
use super::lengths::lines;
use super::plot::plot;
use crate::markup::{Piece, sheet};

/// What has been reckoned so far. Copies are the same; its signals live as long as its page.
#[derive(Clone, Copy)]
pub struct Reckoned {
    fit: RwSignal<Option<Said<Sheet>>>,
    cools: RwSignal<Option<Cooled>>,
    season: RwSignal<Option<Season>>,
    /// Which reckoning is the latest: an older one that comes late is dropped.
    round: StoredValue<u32>,
}

impl Reckoned {
    /// Nothing yet.
    pub fn new() -> Reckoned {
        Reckoned {
            fit: RwSignal::new(None),
            cools: RwSignal::new(None),
            season: RwSignal::new(None),
            round: StoredValue::new(0),
        }
    }

    /// Begins anew with what is given now.
    pub fn begin(self, given: Arc<Same>) {
        self.round.update_value(|round| *round += 1);
        let round = self.round.get_value();
        later(move || self.reckon_fit(&given, round));
    }

    fn latest(self, round: u32) -> bool {
        self.round.try_get_value() == Some(round)
    }

    fn reckon_fit(self, same: &Arc<Same>, round: u32) {
        let given = &same.given;
        if !self.latest(round) {
            return;
        }
        let fitting = given.fitting();
        let said = match (&given.build, fitting) {
            (Some(build), Ok(fitting)) => {
                fit(build, &fitting).map_err(|refusal| Some(grip::refusal(&refusal, given.style)))
            }
            _ => Err(None),
        };
        let fits = said.is_ok();
        self.fit.set(Some(said));
        self.cools.set(None);
        self.season.set(None);
        if fits {
            let same = same.clone();
            later(move || self.reckon_cooling(&same, round));
        }
    }

    fn reckon_cooling(self, same: &Arc<Same>, round: u32) {
        let given = &same.given;
        if let (true, Some(build), Ok(fitting)) =
            (self.latest(round), &given.build, given.fitting())
        {
            self.cools
                .set(cooled(build, &fitting, &Corner::default()).ok());
            let same = same.clone();
            later(move || self.reckon_season(&same.given, round));
        }
    }

    fn reckon_season(self, given: &Given, round: u32) {
        if let (true, Some(build), Ok(fitting)) =
            (self.latest(round), &given.build, given.fitting())
        {
            let year = given.year.as_ref();
            self.season
                .set(year.and_then(|year| season(build, &fitting, year).ok()));
        }
    }
}

fn later(task: impl FnOnce() + 'static) {
    set_timeout(task, Duration::ZERO);
}

/// The two sections, as far as they are reckoned.
pub fn shown(reckoned: Reckoned, given: &Given) -> Piece {
    sheet!(
        "{}{}",
        fitted(reckoned, given),
        through_the_year(reckoned, given)
    )
}

fn fitted(reckoned: Reckoned, given: &Given) -> Option<Piece> {
    let style = given.style;
    if !given.missing.is_empty() {
        let names = given
            .missing
            .iter()
            .map(|size| words::term::size(*size, style));
        let names = names.collect::<Vec<String>>().join(", ");
        return Some(sheet!(
            "<section class=card data-sheet=missing><h2>What gives first</h2>\
             <p>Not reckoned until these sizes are said, under how it is built: {}.</p></section>",
            names
        ));
    }
    let (said, why) = match reckoned.fit.get()? {
        Err(None) => return None,
        // A draw that is refused is told with the lengths already.
        Err(Some(why)) => (vec![Err(Some(why))], None),
        Ok(sheet) => (told(&sheet, given), Some(because(&sheet, given))),
    };
    let cools = reckoned.cools.get();
    Some(sheet!(
        "<section class=card data-sheet=grip><h2>What gives first</h2>{}{}{}</section>",
        lines(said),
        cools.map(|it| as_it_cools(&it, style)),
        why
    ))
}

fn told(sheet: &Sheet, given: &Given) -> Vec<Said<String>> {
    let style = given.style;
    let mut said = vec![grip::gives(sheet, style)];
    said.extend(grip::dish(sheet, style));
    said.extend(grip::lost(sheet, style));
    said.push(grip::grip(sheet, style));
    said.into_iter().map(Ok).collect()
}

fn because(sheet: &Sheet, given: &Given) -> Piece {
    let style = given.style;
    let left = match (&given.build, given.fitting()) {
        (Some(build), Ok(fitting)) => after(build, &fitting).ok(),
        _ => None,
    };
    let (moisture, measured) = given.moisture;
    let moist = decimal(moisture.percent(), 0);
    let moist = if measured {
        format!("Moisture of the felloes as measured: {moist} %.")
    } else {
        format!("Moisture was not measured: {moist} % is taken.")
    };
    let assumed = style.fill("Not asked, and taken in proportion: {felloe}s as wide as the {tyre}, spokes 7/10 as wide as deep, a {nave} of 2/9 of the height.");
    let balance = style.fill("The tyre, the ring of {felloe}s and the spokes are balanced against each other once joints and stand-off have closed; wood crushes and iron stretches where they must. The band is that of the four assumptions that move it most, both ends of each.");
    sheet!(
        "<details class=fold><summary>Why</summary><div class=stack><p>{}</p><p>{}</p><p>{}</p><p>{}</p><p>{}</p><p>{}</p>\
         <p class=dim>Nothing here has been compared with a tyring that was measured: it is an order of size, and no leave to \
         load.</p></div></details>",
        grip::measured(sheet, style),
        grip::spokes(sheet),
        left.map(|left| grip::after(&left, style))
            .unwrap_or_default(),
        moist,
        assumed,
        balance
    )
}

fn through_the_year(reckoned: Reckoned, given: &Given) -> Option<Piece> {
    let season = reckoned.season.get()?;
    let (style, stand) = (given.style, given.chosen.stand);
    let helps = season
        .helps
        .map(|it| sheet!("<p>{}</p>", year::helps(it, style)));
    let rows = season.months.iter().enumerate().map(|(at, month)| {
        let name = words::when::MONTHS.get(at).copied().unwrap_or_default();
        sheet!(
            "<li class=item><span class=strong>{}</span><span>{}</span></li>",
            name,
            year::month(month, style)
        )
    });
    Some(sheet!(
        "<section class=card data-sheet=year><h2>Through the year</h2><p>{}</p>{}<p>{}</p>{}\
         <details class=fold><summary>Month by month</summary><ul class=list>{}</ul></details>\
         <p class=dim>{}</p></section>",
        year::range(&season.range, style),
        helps,
        year::ends(&season, style),
        by_month(&season),
        rows.collect::<Vec<Piece>>(),
        year::stand_source(stand.source())
    ))
}

/// The grip month by month with its band; the figures stand in the list below it.
fn by_month(season: &Season) -> Piece {
    let line = |of: fn(&Month) -> Force| season.months.map(|month| in_newtons(of(&month)));
    let (low, high) = (line(|it| it.grip.low), line(|it| it.grip.high));
    plot(
        &line(|it| it.grip.middle),
        Some((&low, &high)),
        ["January", "December"],
    )
}

/// The grip as the tyre cools, with what it comes to.
fn as_it_cools(cooled: &Cooled, style: words::Style) -> Piece {
    let line = cooled.grip.map(|(_, grip)| in_newtons(grip));
    let half = cooled
        .grip
        .iter()
        .find(|(_, grip)| *grip >= cooled.cold() / 2.0);
    let half = half.map_or_else(String::new, |(at, _)| words::tyring::hot(*at));
    sheet!(
        "<p>{}</p>{}",
        style.fill(&format!("As it cools: half of the grip is there at {half}, all of it only when the {{tyre}} is cold.")),
        plot(&line, None, ["750 °C", "20 °C"])
    )
}
