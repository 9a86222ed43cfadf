//! How fast air carries heat off a hot bar, in still air and in wind, in W/(m² K).

/// Gravity in m/s² (CGPM 1901), and the pressure in Pa and gas constant in J/(kg K) of the U.S. Standard Atmosphere, 1976.
const GRAVITY: f64 = 9.806_65;
const PRESSURE: f64 = 101_325.0;
const GAS: f64 = 287.053;

/// Prandtl's number of air, which lies between 0.68 and 0.71 from 20 to 600 °C (F. P. Incropera, D. P. DeWitt,
/// *Fundamentals of Heat and Mass Transfer*, table A.4).
const PRANDTL: f64 = 0.69;

/// 0.387 / [1 + (0.492/Pr)^(9/16)]^(8/27) at that Prandtl number.
const PLATE: f64 = 0.323_724_773_5;

/// 0.62 Pr^(1/3) / [1 + (0.4/Pr)^(2/3)]^(1/4) at that Prandtl number.
const CROSS: f64 = 0.480_138_268_8;

/// Air at one temperature.
pub(super) struct Air {
    /// How well it conducts heat, in W/(m K).
    pub(super) conducts: f64,
    /// Its viscosity over its density, in m²/s.
    pub(super) kinematic: f64,
}

impl Air {
    /// Air at so many kelvins: Sutherland's viscosity and the conductivity of the U.S. Standard Atmosphere, 1976, equations
    /// 51 and 53, of which 10^(−12/T) is written as the first terms of its series, and the density of an ideal gas.
    pub(super) fn at(k: f64) -> Air {
        let power = k * k.sqrt();
        let x = 12.0 * std::f64::consts::LN_10 / k;
        let ten_to = 1.0 - x * (1.0 - x * (0.5 - x / 6.0));
        let viscosity = 1.458e-6 * power / (k + 110.4);
        Air {
            conducts: 2.646_38e-3 * power / (k + 245.4 * ten_to),
            kinematic: viscosity * GAS * k / PRESSURE,
        }
    }
}

/// Still air over a vertical face `height` m high, at `hot` and `cold` K: S. W. Churchill, H. H. S. Chu, *Int. J. Heat Mass
/// Transfer* 18 (1975), 1323, equation 9. Returns Nusselt's number for that height.
fn still(hot: f64, cold: f64, height: f64, film: &Air, film_k: f64) -> f64 {
    let rise = (hot - cold).max(0.0);
    let grashof =
        GRAVITY * rise * height * height * height / (film_k * film.kinematic * film.kinematic);
    let sixth = cube_root((grashof * PRANDTL).sqrt());
    let root = 0.825 + PLATE * sixth;
    root * root
}

/// Wind of `speed` m/s across a bar `across` m thick: S. W. Churchill, M. Bernstein, *J. Heat Transfer* 99 (1977), 300,
/// equation 10, with Padé's fraction in the place of the last power (within 1 % up to a Reynolds number of 280 000).
fn blown(speed: f64, across: f64, film: &Air) -> f64 {
    let reynolds = speed * across / film.kinematic;
    let part = (reynolds / 282_000.0).sqrt();
    let part = part * part.sqrt().sqrt();
    let four_fifths = (1.0 + 0.9 * part) / (1.0 + 0.1 * part);
    0.3 + CROSS * reynolds.sqrt() * four_fifths
}

/// Still air and wind together, as W/(m² K): the cubes of both add up (S. W. Churchill, *AIChE J.* 23 (1977), 10). `hot`
/// and `cold` in °C, `width` and `thickness` of the bar in mm, `wind` in m/s. Wind meets the bar as a rod of as much round.
pub(super) fn carries(hot: f64, cold: f64, width: f64, thickness: f64, wind: f64) -> f64 {
    let (hot, cold) = (hot + 273.15, cold + 273.15);
    let film_k = (hot + cold) / 2.0;
    let film = Air::at(film_k);
    let (height, across) = (
        width / 1000.0,
        2.0 * (width + thickness) / (std::f64::consts::PI * 1000.0),
    );
    let by_itself = still(hot, cold, height, &film, film_k) * film.conducts / height;
    if wind <= 0.0 {
        return by_itself;
    }
    let by_wind = blown(wind, across, &film) * film.conducts / across;
    let cube = |v: f64| v * v * v;
    cube_root(cube(by_itself) + cube(by_wind))
}

/// The cube root of a number that is not below nothing, by Newton's way from a third of its exponent: the library's own
/// is right for every number there can be, and weighs 1 kB packed.
fn cube_root(number: f64) -> f64 {
    // A third of the exponent's bias, less what makes the error alike on both sides.
    let mut root = f64::from_bits(number.to_bits() / 3 + (715_094_163 << 32));
    for _ in 0..4 {
        root -= (root - number / (root * root)) / 3.0;
    }
    root
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn a_cube_root_is_that_of_the_library(number in 1e-9..1e15_f64) {
            let library = number.cbrt();
            prop_assert!((cube_root(number) - library).abs() <= 1e-15 * library, "{} {library}", cube_root(number));
        }
    }

    #[test]
    fn nothing_has_no_cube_root_that_counts() {
        assert!(cube_root(0.0) < 1e-100);
    }

    /// The two numbers worked out beforehand, from the published form.
    #[test]
    fn the_constants_are_those_of_the_published_form() {
        let plate = 0.387 / (1.0 + (0.492 / PRANDTL).powf(9.0 / 16.0)).powf(8.0 / 27.0);
        let cross = 0.62 * PRANDTL.cbrt() / (1.0 + (0.4 / PRANDTL).powf(2.0 / 3.0)).powf(0.25);
        assert!(
            (PLATE - plate).abs() < 1e-9 && (CROSS - cross).abs() < 1e-9,
            "{plate} {cross}"
        );
    }

    proptest! {
        #[test]
        fn wind_carries_more_and_all_is_finite(
            hot in 20.0..1200.0, cold in -40.0..20.0, width in 5.0..400.0, thickness in 1.0..80.0,
            wind in 0.0..20.0
        ) {
            let of = |wind| carries(hot, cold, width, thickness, wind);
            prop_assert!(of(wind).is_finite() && of(0.0) > 0.0);
            prop_assert!(of(wind) >= of(0.0) && of(wind + 1.0) >= of(wind));
        }
    }
}
