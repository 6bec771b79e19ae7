//! Numbers as they are shown.

/// `value` with `places` decimals (0 to 6), halves away from zero; "not known" where it is no
/// finite number.
///
/// Not the library's formatting, which rounds the binary value with halves to even (24.5 to 24,
/// -0.04 to -0.0): the trade, and the bands of a chart, round halves away from zero.
///
/// ```
/// use penlight::measure::decimals::decimals;
/// assert_eq!(decimals(6.0606, 2), "6.06");
/// assert_eq!(decimals(-0.04, 1), "0.0");
/// assert_eq!(decimals(16.5, 0), "17");
/// ```
pub fn decimals(value: f64, places: u32) -> String {
    let places = places.min(6);
    let scale = 10_i64.pow(places);
    let scaled = (value * scale as f64).round();
    if !scaled.is_finite() || scaled.abs() > 9e15 {
        return "not known".to_owned();
    }
    let scaled = scaled as i64;
    let sign = if scaled < 0 { "-" } else { "" };
    let (whole, part) = (scaled.abs() / scale, scaled.abs() % scale);
    if places == 0 {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{part:0width$}", width = places as usize)
    }
}

/// `value` to one decimal, which is left out where it is nought: "35", "35.4".
///
/// ```
/// use penlight::measure::decimals::short;
/// assert_eq!(short(35.0), "35");
/// assert_eq!(short(35.44), "35.4");
/// ```
pub fn short(value: f64) -> String {
    let mut text = decimals(value, 1);
    if text.ends_with(".0") {
        text.truncate(text.len() - 2);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the standard library's formatting, where neither is at a half.
    #[test]
    fn same_as_the_library() {
        for n in -4_000..4_000 {
            let value = f64::from(n) * 0.0371 + 0.00013;
            assert_eq!(
                decimals(value, 2).trim_start_matches('-'),
                format!("{:.2}", value.abs())
            );
            assert_eq!(
                decimals(value, 0).trim_start_matches('-'),
                format!("{:.0}", value.abs())
            );
        }
        assert_eq!(decimals(f64::NAN, 1), "not known");
        assert_eq!(decimals(1e300, 1), "not known");
        assert_eq!(decimals(1.0, 3), "1.000");
    }
}
