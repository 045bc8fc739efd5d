//! Sentences and words that stand on the pages in more than one place.

use astragal_model::{Effect, NoticeKind};

/// What every page says of itself.
pub(crate) const GOVERNS: &str = "printed from the rules; the rules govern";

/// What stands beside rules of code.
pub(crate) const CODE_CAUTION: &str = "These are checks against published model codes. None of them is an approval: the local code and licensed practice govern.";

/// What happens when a rule is broken.
pub(crate) fn effect(effect: Effect) -> &'static str {
    match effect {
        Effect::Block => "blocks",
        Effect::Warn => "warns",
        Effect::SignOff => "asks for a sign-off",
    }
}

/// What sort of notice it is.
pub(crate) fn kind(kind: NoticeKind) -> &'static str {
    match kind {
        NoticeKind::Caution => "caution",
        NoticeKind::Warranty => "warranty",
        NoticeKind::SignOff => "sign-off",
    }
}
