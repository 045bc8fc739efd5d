//! What measures and facts of one opening must agree on.
//!
//! Always holds: a check reads measures, who deducts, and facts, and nothing that is chosen or worked out from choices, so that it is
//! answered before there is a unit.

use astragal_model::{Expression, SiteCheck, Subject};

use super::resolver::Resolver;
use crate::declare::{Declared, RawSiteCheck};
use crate::finding::Finding;

/// The checks; `None` means that findings say why.
pub(super) fn site_checks(declared: &Declared, resolver: &Resolver<'_>) -> Option<Vec<SiteCheck>> {
    let read = declared.site_checks.iter().map(|raw| site_check(raw, resolver));
    let read: Vec<Option<SiteCheck>> = read.collect();
    read.into_iter().collect()
}

fn site_check(raw: &RawSiteCheck, resolver: &Resolver<'_>) -> Option<SiteCheck> {
    let parsed = raw.require.as_ref()?;
    let require = resolver.condition(&resolver.scope(None), parsed)?;
    if is_chosen(&require) {
        let text = format!("site check `{}` reads something that is chosen", raw.head.id);
        let finding = Finding::error("NOT_OF_A_SITE", text).at(parsed.text.place.clone());
        let help = "a site check reads measures and facts; what depends on choices stands in a `[[rule]]`";
        resolver.findings.push(finding.with_help(help));
        return None;
    }
    Some(SiteCheck {
        id: raw.head.id.clone(),
        require,
        message: raw.message.as_ref()?.text.clone(),
    })
}

fn is_chosen(expression: &Expression) -> bool {
    let reads_a_choice = expression.reads().into_iter().any(|subject| match subject {
        Subject::Attribute(_) | Subject::Figure(_) => true,
        Subject::Measure(_) | Subject::DeductedBy(_) | Subject::Fact(_) => false,
    });
    reads_a_choice || !expression.asks().is_empty()
}
