//! The sizes of a wheel as they are said of it, each only once it is needed; the dish is signed.

use crate::quantity::{Length, LengthRange};

/// One size of a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Size {
    /// Across the wheel, over the sole.
    Height,
    /// Dish as built; negative when built back-dished.
    Dish,
    /// Across the running face of the tyre.
    TyreWidth,
    /// Through the iron of the tyre as new.
    TyreThickness,
    /// Through the felloe, from sole to belly.
    FelloeDepth,
    /// Through the spoke, from face to back.
    SpokeDepth,
    /// Along the box, from end to end.
    BoxLength,
}

impl Size {
    /// Every size, in the order they are asked.
    pub const ALL: [Size; 7] = [
        Size::Height,
        Size::Dish,
        Size::TyreWidth,
        Size::TyreThickness,
        Size::FelloeDepth,
        Size::SpokeDepth,
        Size::BoxLength,
    ];

    /// The word that stands for this size on paper.
    pub fn code(self) -> &'static str {
        match self {
            Size::Height => "height",
            Size::Dish => "dish",
            Size::TyreWidth => "tyre-width",
            Size::TyreThickness => "tyre-thickness",
            Size::FelloeDepth => "felloe-depth",
            Size::SpokeDepth => "spoke-depth",
            Size::BoxLength => "box-length",
        }
    }

    /// What it may be.
    pub fn range(self) -> LengthRange {
        match self {
            Size::Height => LengthRange::WheelDiameter,
            Size::Dish => LengthRange::Dish,
            Size::TyreWidth => LengthRange::TyreWidth,
            Size::TyreThickness => LengthRange::TyreThickness,
            Size::FelloeDepth => LengthRange::FelloeDepth,
            Size::SpokeDepth => LengthRange::SpokeDepth,
            Size::BoxLength => LengthRange::BoxLength,
        }
    }
}

/// The sizes that have been said of one wheel.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sizes([Option<Length>; Size::ALL.len()]);

impl Sizes {
    /// One size, once said.
    pub fn get(&self, size: Size) -> Option<Length> {
        self.0.get(size as usize).copied().flatten()
    }

    /// The same sizes with this one said, or left open again.
    #[must_use]
    pub fn with(mut self, size: Size, length: Option<Length>) -> Sizes {
        if let Some(place) = self.0.get_mut(size as usize) {
            *place = length;
        }
        self
    }

    /// The sizes that have been said, in order.
    pub fn said(&self) -> impl Iterator<Item = (Size, Length)> {
        Size::ALL
            .into_iter()
            .filter_map(|size| Some((size, self.get(size)?)))
    }
}

#[cfg(test)]
mod tests {
    use super::{Size, Sizes};
    use crate::quantity::length::millimetres;
    use std::collections::BTreeSet;

    #[test]
    fn every_size_has_a_code_of_its_own_and_a_place_of_its_own() {
        let codes: BTreeSet<_> = Size::ALL.map(Size::code).into();
        assert_eq!(codes.len(), Size::ALL.len());
        let mut sizes = Sizes::default();
        for (n, size) in (1..).zip(Size::ALL) {
            assert_eq!(sizes.get(size), None);
            sizes = sizes.with(size, Some(millimetres(f64::from(n))));
        }
        let said: Vec<_> = sizes.said().collect();
        let expect: Vec<_> = (1..)
            .zip(Size::ALL)
            .map(|(n, size)| (size, millimetres(f64::from(n))))
            .collect();
        assert_eq!(said, expect);
        assert_eq!(sizes.with(Size::Dish, None).get(Size::Dish), None);
    }

    #[test]
    fn only_the_dish_may_be_below_nought() {
        for size in Size::ALL {
            assert_eq!(size.range().is_signed(), size == Size::Dish);
        }
    }
}
