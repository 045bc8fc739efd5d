//! Where an order is agreed to and when it is signed, on which the buyer's right to cancel depends.
//!
//! Source: docs/reference.md, "order.toml or order.json".

use astragal_model::Agreement;
use astragal_trade::cooling_off::{PlaceOfSale, YEARS};

use crate::finding::Finding;
use crate::nearest::quoted_list;
use crate::tree::TableReader;

/// The words for where an order is agreed to.
const PLACES_OF_SALE: [(&str, PlaceOfSale); 3] = [
    ("buyers-home", PlaceOfSale::BuyersHome),
    ("elsewhere", PlaceOfSale::Elsewhere),
    ("sellers-premises", PlaceOfSale::SellersPremises),
];

/// `sold_at` and `signed`: what the right to cancel depends on.
pub(super) fn read(reader: &mut TableReader<'_>) -> Agreement {
    let written = reader.optional_text("sold_at");
    let place = written.as_ref().and_then(|text| {
        let found = PLACES_OF_SALE.iter().find(|(word, _)| *word == text.value);
        if found.is_none() {
            let words = quoted_list(PLACES_OF_SALE.iter().map(|(word, _)| *word));
            let message = format!("`sold_at` is `{}`; expected one of {words}", text.value);
            let finding = Finding::error("UNKNOWN_WORD", message).at(reader.place_of(&text.span));
            let help = "leave it out while it is not known";
            reader.findings().push(finding.with_help(help));
        }
        found.map(|(_, place)| *place)
    });
    let signed = reader.date("signed");
    if let Some(date) = signed.as_ref().filter(|date| !YEARS.contains(&date.value.year())) {
        let message = format!(
            "`signed` is {}; expected a day from {} to {}",
            date.value,
            YEARS.start(),
            YEARS.end()
        );
        let finding = Finding::error("DATE_OUT_OF_RANGE", message).at(reader.place_of(&date.span));
        reader.findings().push(finding.with_help("is it a slip?"));
    }
    Agreement {
        place,
        signed: signed.map(|date| date.value),
    }
}
