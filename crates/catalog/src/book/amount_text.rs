//! Money and percentages as a book writes them: plain decimals, `1234.50`, and `12.5 %`.
//!
//! What people and spreadsheets write instead has a help of its own: `$12`, `1,234.50`, `12,50`, `(12.50)`.
//!
//! Always holds: nothing is rounded when it is read; rounding comes once, when an item is priced.
//! LIMIT: amounts and percentages are at most a million million either way.

use astragal_model::Number;

use crate::sheet::spreadsheet_help;

/// The most that one amount may be, either way: 10^12.
pub(crate) fn amount_limit() -> Number {
    Number::from(1_000_000_000_000_i64)
}

/// The amount that a text says; otherwise what is wrong and what to do.
pub(crate) fn money(text: &str) -> Result<Number, (String, String)> {
    let text = text.trim();
    if text.contains('%') {
        let message = format!("`{text}` is a percentage; expected an amount of money");
        return Err((message, "write the amount without `%`".to_owned()));
    }
    plain_number(text, "an amount of money", "12.50")
}

/// The percentage that a text with `%` says, 12.5 for `12.5 %`; otherwise what is wrong and what to do.
pub(crate) fn percentage(text: &str) -> Result<Number, (String, String)> {
    let text = text.trim();
    let Some(number) = text.strip_suffix('%') else {
        let message = format!("`{text}` has no `%`; expected a percentage");
        return Err((message, "write it like `15 %`".to_owned()));
    };
    plain_number(number.trim_end(), "a percentage", "`15 %`")
}

/// The number that a plain decimal text says; `example` is how what is wanted looks.
pub(crate) fn plain_number(text: &str, wanted: &str, example: &str) -> Result<Number, (String, String)> {
    let has_exponent = text.contains(['e', 'E']);
    let number = Number::from_decimal(text).filter(|_| !has_exponent);
    match number {
        Some(number) if number.abs() > amount_limit() => {
            let message = format!("`{text}` is too large; at most {} is read", amount_limit());
            Err((message, "was a decimal point lost?".to_owned()))
        }
        Some(number) => Ok(number),
        None if text.is_empty() => Err((
            format!("found nothing, expected {wanted}"),
            format!("write it like {example}"),
        )),
        None => Err((
            format!("`{text}` is not {wanted}"),
            help(text).unwrap_or_else(|| format!("write it like {example}")),
        )),
    }
}

/// What to do about a text that is no plain decimal, when its fault is a known one.
fn help(text: &str) -> Option<String> {
    const SIGNS: [char; 6] = ['$', '€', '£', '¥', '₹', '¢'];
    let digits = text.trim_start_matches('-');
    let is_digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let inside = text.strip_prefix('(').and_then(|text| text.strip_suffix(')'));
    if text.contains(SIGNS)
        || digits
            .split(' ')
            .any(|word| word.len() == 3 && word.bytes().all(|b| b.is_ascii_uppercase()))
    {
        return Some("write the number alone; `currency` of the book says which money it is".to_owned());
    }
    if let Some(inside) = inside {
        return Some(format!("write `-{inside}` for less than nothing"));
    }
    let (whole, fraction) = digits.rsplit_once('.').unwrap_or((digits, ""));
    let groups: Vec<&str> = whole.split([',', ' ', '\u{a0}', '\u{202f}', '\'', '_']).collect();
    let is_grouped = groups.len() > 1
        && groups.iter().all(|group| is_digits(group))
        && groups.iter().skip(1).all(|group| group.len() == 3)
        && (fraction.is_empty() || is_digits(fraction));
    if is_grouped {
        let point = if fraction.is_empty() {
            String::new()
        } else {
            format!(".{fraction}")
        };
        return Some(match groups.as_slice() {
            // `1,234` may be either; with a point behind it, or with two separators, it can only be one.
            [first, second] if fraction.is_empty() && whole.contains(',') => {
                format!(
                    "write `{first}{second}` without the separator, or `{first}.{second}` if it is a decimal comma"
                )
            }
            _ => format!(
                "write `{}{point}` without separators between thousands",
                groups.concat()
            ),
        });
    }
    if let Some(help) = spreadsheet_help(text) {
        return Some(help.to_owned());
    }
    text.starts_with('+').then(|| "leave the `+` out".to_owned())
}
