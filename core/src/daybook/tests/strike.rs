//! Striking out, what it hides, and bringing back.

use super::writer::{Writer, book, lengths};
use crate::daybook::{Book, Entry, Kind, Problem, State, Unwritten};
use crate::wheel::Position;

/// A cart with a wheel, an examination and a reading.
struct Barn {
    cart: Entry,
    wheel: Entry,
    visit: Entry,
    reading: Entry,
    writer: Writer,
}

fn barn() -> Barn {
    let mut writer = Writer::new("barn");
    let cart = writer.begin("Hay cart");
    let wheel = writer.wheel(cart.id, 12, 6);
    let visit = writer.visit(cart.id, "barn");
    let reading = writer.play(cart.id, visit.id, 1.0);
    Barn {
        cart,
        wheel,
        visit,
        reading,
        writer,
    }
}

impl Barn {
    fn book(&self, more: &[&Entry]) -> Book {
        let own = [&self.cart, &self.wheel, &self.visit, &self.reading];
        book(own.into_iter().chain(more.iter().copied()))
    }
}

#[test]
fn what_is_struck_out_does_not_count() {
    let mut barn = barn();
    let strike = barn.writer.strike(&[&barn.reading]);
    let book = barn.book(&[&strike]);
    assert!(lengths(&book, barn.cart.id, barn.visit.id).is_empty());
    let view = book.view();
    let thread = view.vehicle(barn.cart.id).threads(&Kind::Reading)[0];
    assert_eq!(thread.state(), Some(State::Struck(&strike)));
    assert_eq!(thread.last_said(), Some(&barn.reading));
}

#[test]
fn a_strike_against_a_correction_is_a_dispute_in_which_the_value_counts() {
    let mut barn = barn();
    let strike = barn.writer.strike(&[&barn.reading]);
    let mut shop = Writer::after("shop", 4);
    let correction = shop.correct(&[&barn.reading], 2.0);
    let book = barn.book(&[&strike, &correction]);
    assert_eq!(lengths(&book, barn.cart.id, barn.visit.id), [2.0]);
    let view = book.view();
    let disputes = view.vehicle(barn.cart.id).disputes();
    assert_eq!(disputes.len(), 1);
    assert!(disputes[0].heads().contains(&&strike) && !disputes[0].struck());
}

#[test]
fn two_strikes_agree_though_they_stand_in_two_examinations() {
    let mut barn = barn();
    let spring = barn.writer.visit(barn.cart.id, "yard");
    let strike = barn.writer.strike(&[&barn.reading]);
    let other = barn
        .writer
        .write(Unwritten::striking(&barn.reading, vec![barn.reading.id]).in_visit(spring.id));
    let book = barn.book(&[&spring, &strike, &other]);
    let view = book.view();
    let thread = view.vehicle(barn.cart.id).threads(&Kind::Reading)[0];
    assert_eq!(thread.heads().len(), 2);
    assert!(thread.struck() && !thread.disputed());
}

#[test]
fn an_examination_struck_out_hides_its_readings_until_it_is_brought_back() {
    let mut barn = barn();
    let strike = barn.writer.strike(&[&barn.visit]);
    let mut book = barn.book(&[&strike]);
    {
        let view = book.view();
        let vehicle = view.vehicle(barn.cart.id);
        assert!(vehicle.visits().is_empty());
        assert!(vehicle.readings(barn.visit.id).is_empty());
        assert!(vehicle.of_visit(&Kind::Reading, barn.visit.id).is_empty());
        assert!(vehicle.hidden(&barn.reading) && !vehicle.hidden(&barn.wheel));
        let live = vehicle.threads(&Kind::Reading)[0];
        assert_eq!(
            live.state(),
            Some(State::Settled(&barn.reading)),
            "children stay live"
        );
    }
    let back = barn.writer.again(&barn.visit, vec![strike.id]);
    book.add(back.clone());
    let view = book.view();
    let vehicle = view.vehicle(barn.cart.id);
    assert_eq!(vehicle.visits(), [&barn.visit]);
    assert!(!vehicle.hidden(&barn.reading));
    for name in [barn.visit.id, strike.id, back.id] {
        assert_eq!(vehicle.readings(name).len(), 1, "by any of its entries");
    }
}

#[test]
fn a_dispute_in_an_examination_struck_out_is_hidden_with_it() {
    let mut barn = barn();
    let one = barn.writer.correct(&[&barn.reading], 2.0);
    let other = barn.writer.correct(&[&barn.reading], 3.0);
    let strike = barn.writer.strike(&[&barn.visit]);
    let open = barn.book(&[&one, &other]);
    assert_eq!(open.view().vehicle(barn.cart.id).disputes().len(), 1);
    let hidden = barn.book(&[&one, &other, &strike]);
    assert!(hidden.view().vehicle(barn.cart.id).disputes().is_empty());
}

#[test]
fn a_vehicle_struck_out_hides_everything_until_it_is_brought_back() {
    let mut barn = barn();
    let strike = barn.writer.strike(&[&barn.cart]);
    let mut book = barn.book(&[&strike]);
    {
        let view = book.view();
        let vehicle = view.vehicle(barn.cart.id);
        assert!(vehicle.struck() && vehicle.described().is_none());
        assert!(vehicle.wheels().is_empty() && vehicle.visits().is_empty());
        assert!(vehicle.readings(barn.visit.id).is_empty());
        assert!(vehicle.hidden(&barn.reading) && vehicle.hidden(&barn.wheel));
        assert_eq!(view.vehicles(), [barn.cart.id], "it can still be found");
        assert_eq!(vehicle.description().unwrap().last_said(), Some(&barn.cart));
    }
    book.add(barn.writer.again(&barn.cart, vec![strike.id]));
    let view = book.view();
    let vehicle = view.vehicle(barn.cart.id);
    assert_eq!(vehicle.described().unwrap().name, "Hay cart");
    assert_eq!(vehicle.wheels().len(), 1);
    assert_eq!(vehicle.readings(barn.visit.id).len(), 1);
}

#[test]
fn a_wheel_struck_out_can_be_described_again_without_a_dispute() {
    let mut barn = barn();
    let strike = barn.writer.strike(&[&barn.wheel]);
    let book = barn.book(&[&strike]);
    let view = book.view();
    let vehicle = view.vehicle(barn.cart.id);
    assert!(vehicle.wheel(Position::Near).is_none() && vehicle.wheels().is_empty());
    let heads = vehicle.wheel_thread(Position::Near).unwrap().to_replace();
    assert_eq!(heads, [strike.id]);
    let again = barn.writer.again(&barn.wheel, heads);
    let book = barn.book(&[&strike, &again]);
    let view = book.view();
    assert_eq!(
        view.vehicle(barn.cart.id).wheel(Position::Near).unwrap().1,
        again.id
    );
    assert!(view.vehicle(barn.cart.id).disputes().is_empty());
}

#[test]
fn a_strike_of_nothing_has_no_effect_and_is_reported() {
    let mut barn = barn();
    for seen in [&barn.cart, &barn.wheel, &barn.visit, &barn.reading] {
        let elsewhere = if seen == &barn.visit {
            barn.cart.id
        } else {
            barn.visit.id
        };
        for heads in [vec![], vec![elsewhere]] {
            let strike = barn.writer.write(Unwritten::striking(seen, heads));
            let book = book([&barn.cart, &barn.wheel, &barn.visit, &barn.reading, &strike]);
            let view = book.view();
            assert!(
                view.problems()
                    .contains(&Problem::StrikesNothing(strike.id))
            );
            let vehicle = view.vehicle(barn.cart.id);
            assert!(vehicle.disputes().is_empty(), "{:?}", seen.kind);
            assert!(vehicle.described().is_some());
            assert_eq!(vehicle.wheels().len(), 1);
            assert_eq!(vehicle.visits(), [&barn.visit]);
            assert_eq!(vehicle.readings(barn.visit.id).len(), 1);
        }
    }
}

#[test]
fn a_strike_of_something_not_here_holds() {
    let mut barn = barn();
    let strike = barn.writer.strike(&[&barn.wheel]);
    let book = book([&barn.cart, &strike]);
    let view = book.view();
    let vehicle = view.vehicle(barn.cart.id);
    assert!(vehicle.wheel_thread(Position::Near).unwrap().struck());
    let missing = Problem::EarlierNotHere {
        entry: strike.id,
        count: 1,
    };
    assert_eq!(view.problems(), [missing]);
}
