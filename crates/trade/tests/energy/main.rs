//! Energy: the programme's table, the code's tables, averages. Each row names where its answer is known from.

#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

mod average;
mod cells;
mod code;
mod laws;
mod programme;

use astragal_exact::Number;
use astragal_trade::energy::rating::Ratings;

fn number(text: &str) -> Number {
    Number::from_decimal(text).unwrap_or_else(|| panic!("{text}"))
}

fn ratings(u_factor: &str, solar_heat_gain: &str) -> Ratings {
    Ratings {
        u_factor: Number::from_decimal(u_factor),
        solar_heat_gain: Number::from_decimal(solar_heat_gain),
    }
}
