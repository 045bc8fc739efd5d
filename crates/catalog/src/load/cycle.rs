//! Things that depend on each other in a circle, as one finding that names the chain with its places.

use std::collections::BTreeMap;

use astragal_model::{Declarations, Id, PartIndex, Position, Step};

use super::places::{DeclarationKind, Places};
use crate::finding::{Finding, Place};

/// One thing of a circle.
#[derive(Clone, Debug)]
pub(crate) struct Link {
    /// Its name, in backticks.
    pub(crate) name: String,
    /// Where it stands.
    pub(crate) place: Option<Place>,
}

/// The finding for a circle: each link needs the next, and the last needs the first.
///
/// It begins with the least name, so that the same circle is the same finding wherever it was entered.
pub(crate) fn circle(links: &[Link]) -> Finding {
    let start = links
        .iter()
        .enumerate()
        .min_by(|(_, a), (_, b)| a.name.cmp(&b.name))
        .map_or(0, |(at, _)| at);
    let turned = || links.iter().cycle().skip(start).take(links.len());
    let first = turned().next();
    let mut chain: Vec<&str> = turned().map(|link| link.name.as_str()).collect();
    chain.extend(first.map(|link| link.name.as_str()));
    let subject = first.map_or("something", |link| link.name.as_str());
    let message = format!("{subject} depends on itself: {}", chain.join(" needs "));
    let mut finding = Finding::error("CYCLE", message)
        .at_if_known(first.and_then(|link| link.place.clone()))
        .with_help("take one of these out of what another is worked out from");
    for link in turned().skip(1) {
        if let Some(place) = &link.place {
            finding = finding.with_related(place.clone(), link.name.clone());
        }
    }
    finding
}

/// The circle that the standards of a policy close.
pub(crate) fn policy_circle(declarations: &Declarations, chain: &[Step], place: Option<Place>) -> Finding {
    let mut links = StepNames::of(declarations, &Places::default()).name(chain);
    for link in &mut links {
        link.place = None;
    }
    circle(&links).at_if_known(place)
}

/// What each step of filling is called and where it stands.
pub(crate) struct StepNames(BTreeMap<Step, Link>);

impl StepNames {
    /// The names of all attributes and figures.
    pub(crate) fn of(declarations: &Declarations, places: &Places) -> Self {
        let name = |id: &Id, part: Option<PartIndex>| match part.and_then(|part| declarations.parts.get(part))
        {
            Some(part) => format!("`{id}.{}`", part.id),
            None => format!("`{id}`"),
        };
        let link = |kind, id: &Id, part| Link {
            name: name(id, part),
            place: places.of_kind(kind, id).map(|it| it.place.clone()),
        };
        let attributes = declarations.attributes.iter().map(|(index, it)| {
            (
                Step::Attribute(index),
                link(DeclarationKind::Attribute, &it.id, it.part),
            )
        });
        let figures = declarations.figures.iter().map(|(index, it)| {
            (
                Step::Figure(index),
                link(DeclarationKind::Figure, &it.id, it.part),
            )
        });
        Self(attributes.chain(figures).collect())
    }

    /// The links of a chain.
    pub(crate) fn name(&self, chain: &[Step]) -> Vec<Link> {
        let unnamed = |step: &Step| Link {
            name: match step {
                Step::Attribute(index) => format!("attribute {}", index.to_usize()),
                Step::Figure(index) => format!("figure {}", index.to_usize()),
            },
            place: None,
        };
        chain
            .iter()
            .map(|step| self.0.get(step).cloned().unwrap_or_else(|| unnamed(step)))
            .collect()
    }
}
