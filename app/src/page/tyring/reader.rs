//! Reads what is typed on the tyring sheet, and keeps a sentence for whatever cannot be so.

use cartside_core::daybook::tyring::{MonthSaid, Ran, TakenWith, Warm};
use cartside_core::daybook::{RoundTaken, TyringSaid};
use cartside_core::mechanics::Year;
use cartside_core::quantity::length::{from_paper_mm, millimetres, to_paper_mm};
use cartside_core::quantity::temperature::celsius;
use cartside_core::quantity::{Length, LengthRange, Measured, Percent, spelling};
use cartside_core::tyring::draw::Joints;
use cartside_core::tyring::round::{Care, Round};
use cartside_core::tyring::runs;
use cartside_core::wheel::Position;
use cartside_core::words::{self, Style};

use super::chosen::Chosen;
use super::field::{Field, Typed};
use super::given::{Said, refused};

/// To how many kelvins either side a warm tyre is known: a hand or a dial thermometer; common practice, no source.
const WARM_WITHIN: u16 = 10;

/// What is typed where the tyre was run with a tape and the wheel with a traveller.
pub const TAPE: &str = "tape";

/// Reads the fields.
pub struct Reader<'a> {
    typed: &'a Typed,
    style: Style,
    chosen: Chosen,
    /// Whatever cannot be so, a sentence each.
    pub refused: Vec<String>,
}

impl<'a> Reader<'a> {
    /// Of what is typed and chosen.
    pub fn new(typed: &'a Typed, style: Style, chosen: Chosen) -> Reader<'a> {
        Reader {
            typed,
            style,
            chosen,
            refused: Vec::new(),
        }
    }

    fn text(&self, field: Field) -> Option<&'a str> {
        let text = self.typed.get(field as usize)?.trim();
        (!text.is_empty()).then_some(text)
    }

    /// Keeps what can be, and a sentence where it cannot.
    fn noted<T>(&mut self, said: Said<T>) -> Option<T> {
        match said {
            Ok(value) => Some(value),
            Err(why) => {
                self.refused.extend(why);
                None
            }
        }
    }

    fn read(&self, field: Field, range: LengthRange) -> Said<Length> {
        self.spelt(self.text(field).ok_or(None)?, range)
    }

    fn spelt(&self, text: &str, range: LengthRange) -> Said<Length> {
        let read = spelling::parse(text, range, self.style.length.bare_unit());
        read.map_err(|refusal| Some(refusal.to_string()))
    }

    fn length(&mut self, field: Field, range: LengthRange) -> Option<Length> {
        let read = self.read(field, range);
        // What was typed is kept as it stands on paper, so that it comes back the same.
        let read = read.map(on_paper);
        self.noted(read)
    }

    /// A whole number that may be missing.
    fn whole(&self, field: Field) -> Result<Option<i16>, Option<String>> {
        let Some(text) = self.text(field) else {
            return Ok(None);
        };
        let (least, most) = match field {
            Field::Carry => (0, 600),
            Field::Wind => (0, 20),
            Field::Air => (-40, 60),
            _ => (-40, 150),
        };
        let plain = text.replace('\u{2212}', "-");
        let read = plain.parse().ok().filter(|it| (least..=most).contains(it));
        match read {
            None => Err(Some(format!(
                "{}: “{text}” was given; a whole number from {} to {most} is allowed. Nothing was changed.",
                words::capital(&field.label(self.style)),
                least.to_string().replace('-', "−")
            ))),
            read => Ok(read),
        }
    }

    fn whole_noted(&mut self, field: Field) -> Option<i16> {
        let said = self.whole(field);
        self.noted(said).flatten()
    }

    /// What is chosen and typed, as it is kept.
    pub fn tyring(&mut self, position: Position) -> TyringSaid {
        let short = |it: i16| it.unsigned_abs();
        let chosen = self.chosen;
        TyringSaid {
            draw: self.length(Field::Draw, LengthRange::Draw),
            cramped: self.length(Field::Cramped, LengthRange::JointSum),
            cut: self.length(Field::Cut, LengthRange::General),
            charred: self.length(Field::Charred, LengthRange::FeelerGap),
            oval: self.length(Field::Oval, LengthRange::OutOfRound),
            clearance: self.length(Field::Clearance, LengthRange::Clearance),
            carry: self.whole_noted(Field::Carry).map(short),
            wind: self.whole_noted(Field::Wind).map(short),
            air: self.whole_noted(Field::Air),
            lay: chosen.lay,
            iron: Some(chosen.iron),
            timbers: chosen.timbers.map(Some),
            grains: chosen.wood().map(|it| it.grain),
            stand: Some(chosen.stand),
            months: self.months(),
            ..TyringSaid::of(position)
        }
    }

    fn months(&mut self) -> Option<[MonthSaid; 12]> {
        let text = self.text(Field::Months)?;
        let read = text
            .split(';')
            .map(month)
            .collect::<Option<Vec<MonthSaid>>>();
        let twelve = read.and_then(|months| months.try_into().ok());
        self.noted(twelve.ok_or_else(|| {
            Some(format!(
                "The air by month: “{text}” was given; twelve pairs of humidity and °C are allowed, such as 86 4; 83 5; and so on. Nothing was changed."
            ))
        }))
    }

    /// What was run with: the sole's traveller, unless another one is said of the tyre. `2: 631` is the shop's second.
    fn with(&self, ran: Ran) -> Said<TakenWith> {
        let other = self.text(Field::Other).filter(|_| ran != Ran::Sole);
        let text = other.or(self.text(Field::Traveller)).unwrap_or(TAPE);
        if text.eq_ignore_ascii_case(TAPE) {
            return Ok(TakenWith::Tape(0, self.chosen.tape));
        }
        let usual = 1 + u16::from(other.is_some());
        let numbered = text.split_once(':');
        let numbered = numbered.and_then(|(number, own)| Some((number.trim().parse().ok()?, own)));
        let (number, own) = numbered.unwrap_or((usual, text));
        let own = on_paper(self.spelt(own, LengthRange::TravellerRound)?);
        let doubt = millimetres(0.5).min(own / 40.0);
        let own = Measured::new(own, on_paper(doubt));
        own.map(|own| TakenWith::Traveller(number, own))
            .map_err(|it| Some(it.to_string()))
    }

    /// A round as it is kept; what was run decides what is said of its iron.
    pub fn round(&mut self, position: Position, ran: Ran) -> Option<RoundTaken> {
        let field = match ran {
            Ran::Sole => Field::Wheel,
            Ran::Tyre => Field::Tyre,
            Ran::Welded => Field::Welded,
            Ran::Lying => Field::Lying,
        };
        let text = self.text(field)?;
        let with = self.with(ran);
        let with = self.noted(with)?;
        let runs = refused(runs::read(text, self.style.length.bare_unit()), self.style);
        let mut runs = self.noted(runs)?;
        for run in &mut runs {
            run.past = on_paper(run.past);
        }
        let warm = match ran {
            Ran::Tyre => self.whole_noted(Field::Warm),
            _ => None,
        };
        Some(RoundTaken {
            position,
            ran,
            with,
            line: self.chosen.line,
            runs,
            warm: warm.map(|at| Warm {
                at,
                within: WARM_WITHIN,
            }),
            hot_weld: self.chosen.hot_weld && ran == Ran::Welded,
            written: text.to_owned(),
        })
    }

    /// The round with its doubt.
    pub fn reckoned(&mut self, round: Option<&RoundTaken>) -> Option<Round> {
        let round = round?.reckoned(self.chosen.iron, Care::default());
        self.noted(refused(round, self.style))
    }

    /// The joints as they stand and cramped.
    pub fn joints(&mut self, open: Measured, cramped: Option<Length>) -> Said<Joints> {
        let cramped = cramped.map(|it| Measured::new(it, open.doubt()).unwrap_or_default());
        refused(Joints::of(open, cramped), self.style)
    }

    /// The year where the cart stands: as it was entered, or else that of such a place.
    pub fn year(&mut self, said: &TyringSaid) -> Option<Year> {
        let Some(months) = &said.months else {
            return Some(self.chosen.stand.year());
        };
        let air = months.map(|(damp, air)| (Percent::whole(damp), celsius(f64::from(air))));
        let year = Year::of_air(&air)
            .map_err(|refusal| Some(words::timber::moisture(refusal, self.style)));
        self.noted(year)
    }
}

fn month(text: &str) -> Option<MonthSaid> {
    let mut parts = text.split_whitespace();
    let damp = parts.next()?.parse().ok().filter(|it| *it <= 100)?;
    let air = parts.next()?.replace('\u{2212}', "-").parse().ok()?;
    (parts.next().is_none() && (-90..=60).contains(&air)).then_some((damp, air))
}

/// A length as it reads once it stands on paper.
fn on_paper(length: Length) -> Length {
    from_paper_mm(to_paper_mm(length)).unwrap_or(length)
}
