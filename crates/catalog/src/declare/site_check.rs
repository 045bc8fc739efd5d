//! `[[site_check]]`: what measures and facts of one opening must agree on.

use super::{Fields, Head, IdKind};
use crate::typed::{Parsed, PlacedText};

/// `[[site_check]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawSiteCheck {
    pub(crate) head: Head,
    pub(crate) require: Option<Parsed>,
    pub(crate) message: Option<PlacedText>,
}

pub(super) fn site_check(mut fields: Fields<'_>) -> Option<RawSiteCheck> {
    let head = fields.head(IdKind::Other);
    let require = if fields.reader.requires("require") {
        fields.expression("require")
    } else {
        None
    };
    let message = fields.required_text("message");
    fields.reader.finish();
    Some(RawSiteCheck {
        head: head?,
        require,
        message,
    })
}
