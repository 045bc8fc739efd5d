//! Random catalogs, books, policies, sites, picks and units, from a seed.
//!
//! A [`World`] is a catalog with a book and a policy; a [`Case`] is a question put to it: a site, picks or a unit,
//! waivers, authorities, a day. Values are few of each type, so that equal ones meet and ends of ranges are hit.
//!
//! Always holds: the same seed and size make the same world and cases. Catalogs are well typed and have no cycles;
//! units need not make sense.
//! Cost: linear in the size; expressions grow with a power of their depth.

mod cases;
mod declarations;
mod expressions;
mod prices;
mod shape;
mod tables;
mod values;

use astragal_model::{Authorities, Book, Catalog, Date, Pick, Policy, Setting, Site, Unit, Waiver};

use crate::chance::Chance;
use expressions::Maker;
use shape::Shape;
pub use values::value;

/// How large worlds may become.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Size {
    /// The most attributes, before they are multiplied by parts.
    pub attributes: usize,
    /// The most figures, before they are multiplied by parts.
    pub figures: usize,
    /// The most rules, before they are multiplied by parts.
    pub rules: usize,
    /// The most price items, before they are multiplied by parts.
    pub items: usize,
    /// The most measures, facts and notices.
    pub each: usize,
    /// How deep expressions nest.
    pub depth: usize,
}

impl Size {
    /// From the smallest to the usual.
    pub const LADDER: [Self; 4] = [
        Self {
            attributes: 1,
            figures: 1,
            rules: 1,
            items: 1,
            each: 1,
            depth: 1,
        },
        Self {
            attributes: 2,
            figures: 2,
            rules: 1,
            items: 1,
            each: 1,
            depth: 2,
        },
        Self {
            attributes: 3,
            figures: 3,
            rules: 2,
            items: 3,
            each: 2,
            depth: 2,
        },
        Self::USUAL,
    ];

    /// The usual size.
    pub const USUAL: Self = Self {
        attributes: 5,
        figures: 5,
        rules: 5,
        items: 5,
        each: 3,
        depth: 3,
    };
}

/// A catalog with a book and a policy.
#[derive(Clone, Debug)]
pub struct World {
    /// The seed of which it was made.
    pub seed: u64,
    /// The catalog.
    pub catalog: Catalog,
    /// The book; not every world has one.
    pub book: Option<Book>,
    /// The policy; not every world has one.
    pub policy: Option<Policy>,
}

/// A question put to a world.
#[derive(Clone, Debug)]
pub struct Case {
    /// What is known about the opening.
    pub site: Site,
    /// What was picked.
    pub picks: Vec<Pick>,
    /// Whether the unit is what filling makes of the picks, or has been changed by chance.
    pub wild: bool,
    /// The waivers.
    pub waivers: Vec<Waiver>,
    /// Whose rules bind.
    pub authorities: Authorities,
    /// The day.
    pub date: Date,
}

impl World {
    /// The world of this seed. `None` when the seed makes declarations that are no catalog, which ranks prevent.
    #[must_use]
    pub fn new(seed: u64, size: Size) -> Option<Self> {
        let mut chance = Chance::new(seed);
        let shape = Shape::new(&mut chance, size);
        let mut maker = Maker {
            chance: &mut chance,
            shape: &shape,
            depth: size.depth,
        };
        let declared = maker.declarations(size);
        let book = if maker.chance.percent(90) {
            maker.book(&declared)
        } else {
            None
        };
        let terms = maker.chance.percent(50).then(|| maker.policy(&declared, size));
        let catalog = Catalog::new(declared).ok()?;
        let policy = match terms {
            Some(terms) => Some(catalog.policy(terms).ok()?),
            None => None,
        };
        Some(Self {
            seed,
            catalog,
            book,
            policy,
        })
    }

    /// The same world with the rules, items and notices of catalog and policy in the opposite order.
    #[must_use]
    pub fn reversed(&self) -> Option<Self> {
        let mut declared = self.catalog.declarations().clone();
        declared.rules.reverse();
        declared.notices.reverse();
        declared.items = declared.items.values().rev().cloned().collect();
        let catalog = Catalog::new(declared).ok()?;
        let policy = match &self.policy {
            Some(policy) => {
                let mut terms = policy.terms.clone();
                terms.rules.reverse();
                Some(catalog.policy(terms).ok()?)
            }
            None => None,
        };
        Some(Self {
            seed: self.seed,
            catalog,
            book: self.book.clone(),
            policy,
        })
    }

    /// The setting of a case.
    #[must_use]
    pub fn setting<'a>(&'a self, case: &'a Case) -> Setting<'a> {
        Setting {
            catalog: &self.catalog,
            book: self.book.as_ref(),
            policy: self.policy.as_ref(),
            site: &case.site,
            waivers: &case.waivers,
            authorities: &case.authorities,
            date: case.date,
        }
    }

    /// Case number `count` of this world.
    #[must_use]
    pub fn case(&self, count: u64) -> Case {
        cases::case(&mut self.chance(count), self)
    }

    /// The unit of case number `count`: what `filled` is, or a change of it.
    #[must_use]
    pub fn unit(&self, count: u64, case: &Case, filled: &Unit) -> Unit {
        if case.wild {
            cases::changed(&mut self.chance(count ^ (1 << 40)), self, filled)
        } else {
            filled.clone()
        }
    }

    fn chance(&self, count: u64) -> Chance {
        let mut chance = Chance::new(self.seed ^ count.wrapping_add(1).wrapping_mul(0xd134_2543_de82_ef95));
        let seed = chance.bits();
        Chance::new(seed)
    }
}
