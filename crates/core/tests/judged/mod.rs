//! Every configuration of a small catalog, judged one by one.

use astragal_model::{
    Attribute, AttributeIndex, Catalog, Choice, Indexed, Origin, Setting, Unit, Verdict, judge,
};

/// More configurations than this are not judged one by one.
const CONFIGURATIONS_MAX: usize = 600;

/// All configurations: an option of every attribute, or not asked where it has a condition.
fn configurations(catalog: &Catalog) -> Option<Vec<Vec<usize>>> {
    let sizes = catalog.declarations().attributes.values();
    let sizes: Vec<usize> = sizes
        .map(|one| one.options.len() + usize::from(one.applies_when.is_some()))
        .collect();
    let product = sizes
        .iter()
        .try_fold(1_usize, |product, size| product.checked_mul(*size))?;
    if product > CONFIGURATIONS_MAX {
        return None;
    }
    let mut all = vec![Vec::new()];
    for size in sizes {
        let longer = |before: &Vec<usize>| {
            (0..size)
                .map(|value| [before.as_slice(), &[value]].concat())
                .collect::<Vec<_>>()
        };
        all = all.iter().flat_map(longer).collect();
    }
    Some(all)
}

/// The unit of these values, with an origin for each attribute and value.
pub(crate) fn unit(catalog: &Catalog, values: &[usize], origin: &dyn Fn(usize, usize) -> Origin) -> Unit {
    let attributes = catalog.declarations().attributes.iter();
    let choice = |((index, attribute), value): ((AttributeIndex, &Attribute), &usize)| match attribute
        .options
        .get(*value)
    {
        Some(option) => Choice::Chosen {
            option: option.id.clone(),
            origin: origin(index.0, *value),
        },
        None => Choice::NotAsked,
    };
    let choices: Indexed<_, _> = attributes.zip(values).map(choice).collect();
    Unit { choices }
}

/// A configuration and what judging says of it.
pub(crate) struct Judged {
    pub(crate) values: Vec<usize>,
    pub(crate) verdict: Verdict,
    pub(crate) cents: Option<i64>,
}

/// Every configuration, judged; `None` when there are too many.
pub(crate) fn judged(setting: &Setting<'_>, origin: &dyn Fn(usize, usize) -> Origin) -> Option<Vec<Judged>> {
    let all = configurations(setting.catalog)?;
    let one = |values: Vec<usize>| {
        let judgement = judge(setting, &unit(setting.catalog, &values, origin));
        Judged {
            verdict: judgement.verdict,
            cents: judgement.subtotal.and_then(|money| money.minor_units()),
            values,
        }
    };
    Some(all.into_iter().map(one).collect())
}
