//! A number as decimal text: what the app draws and keeps with a few decimals needs none of the code that writes any
//! number there can be.

/// The number rounded to at most six places, without noughts at its end: `12.5`, `-3`. What is no number is `0`.
#[must_use]
pub fn decimal(value: f64, places: u32) -> String {
    let unit = 10_u64.pow(places.min(6));
    let parts = (value.abs() * unit as f64).round() as u64;
    let sign = if value < 0.0 && parts > 0 { "-" } else { "" };
    let (whole, part) = (parts / unit, parts % unit);
    let text = format!("{sign}{whole}.{part:00$}", places.min(6) as usize);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::decimal;

    #[test]
    fn noughts_at_the_end_are_left_out() {
        assert_eq!(decimal(12.5, 2), "12.5");
        assert_eq!(decimal(100.0, 1), "100");
        assert_eq!(decimal(0.0, 0), "0");
        assert_eq!(decimal(120.0, 0), "120");
        assert_eq!(decimal(-0.004, 2), "0");
        assert_eq!(decimal(-3.145, 1), "-3.1");
        assert_eq!(decimal(f64::NAN, 2), "0");
    }

    proptest! {
        #[test]
        fn it_is_within_half_of_the_last_place(value in -1e6..1e6, places in 0_u32..=6) {
            let read: f64 = decimal(value, places).parse().unwrap();
            prop_assert!((read - value).abs() <= 0.5 / 10_f64.powi(places as i32) + 1e-9);
        }
    }
}
