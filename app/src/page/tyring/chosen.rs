//! What is chosen on the tyring sheet from lists.

use cartside_core::daybook::TyringSaid;
use cartside_core::material::timber::{Grain, Timber};
use cartside_core::material::{Iron, Species};
use cartside_core::mechanics::Stand;
use cartside_core::tyring::round::{Line, TapeClass};

/// What is chosen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chosen {
    /// The iron of the tyre.
    pub iron: Iron,
    /// Where the cart stands.
    pub stand: Stand,
    /// The timbers of nave, spokes and felloes.
    pub timbers: [Species; 3],
    /// How hard the side grain of each is, where that was said.
    pub grains: [Option<Grain>; 3],
    /// The line that was run.
    pub line: Line,
    /// The tape, where no traveller is.
    pub tape: TapeClass,
    /// Whether the weld was hot as its round was taken.
    pub hot_weld: bool,
    /// Whole seconds from the fire until it lay.
    pub lay: Option<u16>,
}

impl Default for Chosen {
    fn default() -> Chosen {
        Chosen {
            iron: Iron::NotKnown,
            stand: Stand::ClosedBarn,
            timbers: [
                Species::EnglishElm,
                Species::EnglishOak,
                Species::EuropeanAsh,
            ],
            grains: [None; 3],
            line: Line::Middle,
            tape: TapeClass::II,
            hot_weld: false,
            lay: None,
        }
    }
}

impl Chosen {
    /// What an examination chose, as far as it did.
    pub fn said(said: &TyringSaid) -> Chosen {
        let usual = Chosen::default();
        let [nave, spokes, felloes] = said.timbers;
        let [usual_nave, usual_spokes, usual_felloes] = usual.timbers;
        Chosen {
            iron: said.iron.unwrap_or(usual.iron),
            stand: said.stand.unwrap_or(usual.stand),
            timbers: [
                nave.unwrap_or(usual_nave),
                spokes.unwrap_or(usual_spokes),
                felloes.unwrap_or(usual_felloes),
            ],
            grains: said.grains,
            lay: said.lay,
            ..usual
        }
    }

    /// The timbers with what was said of their grain.
    pub fn wood(&self) -> [Timber; 3] {
        let mut wood = self.timbers.map(Timber::from);
        for (timber, grain) in wood.iter_mut().zip(self.grains) {
            timber.grain = grain.filter(|_| timber.species.asks_for_grain());
        }
        wood
    }
}
