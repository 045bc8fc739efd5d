//! Random catalogs in a few lines, and the same catalog in another order.

use astragal_core::options::Picked;
use astragal_model::AttributeIndex;
use astragal_oracle::chance::Chance;

use super::{Gate, Plain, Together};

/// How many different conditions there are on each of two measures.
const ABOVE: [i64; 2] = [36, 48];
/// Sizes below, at and above those.
const SIZES: [Option<i64>; 5] = [None, Some(30), Some(36), Some(40), Some(60)];

/// A random catalog of at most so many configurations.
pub(crate) fn plain(chance: &mut Chance, configurations: usize) -> Plain {
    let star = chance.percent(6);
    let mut options: Vec<usize> = if star {
        vec![2; 7]
    } else {
        (0..chance.between(2, 5)).map(|_| chance.between(2, 3)).collect()
    };
    while !star && options.iter().product::<usize>() > configurations {
        options.pop();
    }
    let mut plain = Plain::of(&options);
    plain.measures = 2;
    let count = options.len();
    if star {
        for leaf in 1..count {
            let hub = (0, chance.below(2));
            let guard = gate(chance, 80);
            let first = chance.below(2);
            // One option of the leaf, or both: then the condition closes the leaf for this option of the hub.
            for option in [first, 1 - first].into_iter().take(chance.between(1, 2)) {
                plain
                    .forbidden
                    .push(Together::where_is(&[hub, (leaf, option)], guard));
            }
        }
    } else {
        for attribute in 1..count {
            if chance.percent(25) {
                plain.attributes[attribute].applies = Some(together(chance, &options[..attribute], 1, 60));
            }
        }
        let most = chance.one_of(&[2, 4, 9]).copied().unwrap_or(4);
        for _ in 0..chance.between(0, most) {
            plain.forbidden.push(together(chance, &options, 3, 40));
        }
    }
    for _ in 0..chance.between(0, 4) {
        let cents = chance
            .one_of(&[-700, -100, 100, 100, 250, 1_999])
            .copied()
            .unwrap_or(0);
        plain.priced.push((together(chance, &options, 2, 25), cents));
    }
    plain
}

/// Options of one to so many attributes, guarded in so many of a hundred cases.
fn together(chance: &mut Chance, options: &[usize], most: usize, guarded: usize) -> Together {
    let mut attributes: Vec<usize> = (0..options.len()).collect();
    chance.shuffle(&mut attributes);
    attributes.truncate(chance.between(1, most));
    let pick = |chance: &mut Chance, attribute: usize| (attribute, chance.below(options[attribute]));
    Together {
        options: attributes.into_iter().map(|one| pick(chance, one)).collect(),
        gate: gate(chance, guarded),
    }
}

fn gate(chance: &mut Chance, percent: usize) -> Option<Gate> {
    chance.percent(percent).then(|| Gate {
        measure: chance.below(2),
        above: chance.copy_of(&ABOVE),
        holds: chance.percent(50),
    })
}

/// Another thing that does not go together.
pub(crate) fn one_more(chance: &mut Chance, plain: &Plain) -> Together {
    let options: Vec<usize> = plain.attributes.iter().map(|one| one.options.len()).collect();
    together(chance, &options, 3, 40)
}

/// Random sizes of both measures.
pub(crate) fn sizes(chance: &mut Chance) -> Vec<Option<i64>> {
    (0..2).map(|_| chance.copy_of(&SIZES)).collect()
}

/// Random picks, at most one an attribute, some of them pinned.
pub(crate) fn picks(chance: &mut Chance, plain: &Plain) -> Vec<Picked> {
    let often = chance.below(101);
    let mut picks = Vec::new();
    for (attribute, asked) in plain.attributes.iter().enumerate() {
        if chance.percent(often) {
            picks.push(Picked {
                attribute: AttributeIndex(attribute),
                value: chance.below(asked.options.len()),
                pinned: chance.percent(10),
                honoured: false,
            });
        }
    }
    picks
}

/// Where things of a catalog stand in another order of the same catalog.
pub(crate) struct Places {
    /// For each attribute its new place, and the new places of its options.
    pub(crate) attributes: Vec<(usize, Vec<usize>)>,
}

impl Places {
    /// Another order, by chance.
    fn new(chance: &mut Chance, plain: &Plain) -> Self {
        let mut order = |count: usize| {
            let mut order: Vec<usize> = (0..count).collect();
            chance.shuffle(&mut order);
            order
        };
        let places = order(plain.attributes.len());
        let attributes = places.iter().zip(&plain.attributes);
        Self {
            attributes: attributes
                .map(|(place, asked)| (*place, order(asked.options.len())))
                .collect(),
        }
    }

    pub(crate) fn option(&self, attribute: usize, option: usize) -> (usize, usize) {
        let (place, options) = &self.attributes[attribute];
        // *Not asked* comes after all options, in whatever order they stand.
        (*place, options.get(option).copied().unwrap_or(option))
    }

    pub(crate) fn picks(&self, picks: &[Picked]) -> Vec<Picked> {
        let moved = |pick: &Picked| {
            let (attribute, value) = self.option(pick.attribute.0, pick.value);
            Picked {
                attribute: AttributeIndex(attribute),
                value,
                ..*pick
            }
        };
        picks.iter().map(moved).collect()
    }

    fn together(&self, together: &Together) -> Together {
        let options = together.options.iter();
        Together {
            options: options
                .map(|(attribute, option)| self.option(*attribute, *option))
                .collect(),
            gate: together.gate,
        }
    }
}

/// The same catalog with attributes, options, rules and items in another order.
pub(crate) fn shuffled(chance: &mut Chance, plain: &Plain) -> (Plain, Places) {
    let places = Places::new(chance, plain);
    let mut other = plain.clone();
    for (old, (place, options)) in plain.attributes.iter().zip(&places.attributes) {
        let new = &mut other.attributes[*place];
        new.name.clone_from(&old.name);
        new.options = vec![String::new(); options.len()];
        for (name, option) in old.options.iter().zip(options) {
            new.options[*option].clone_from(name);
        }
        new.applies = old.applies.as_ref().map(|together| places.together(together));
    }
    other.forbidden = plain.forbidden.iter().map(|one| places.together(one)).collect();
    chance.shuffle(&mut other.forbidden);
    let priced = plain.priced.iter();
    other.priced = priced
        .map(|(one, cents)| (places.together(one), *cents))
        .collect();
    chance.shuffle(&mut other.priced);
    (other, places)
}
