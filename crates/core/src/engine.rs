//! The engine of one catalog: compiled once, prepared for a setting, asked any number of questions.
//!
//! Always holds: an engine can be shared between threads; a question changes nothing.

use astragal_model::{AttributeIndex, Authorities, Catalog, PolicyTerms, Setting, Subject};
use num_bigint::BigUint;

use crate::compile::compile;
use crate::complete::{Completion, Disagreement, Wish, complete};
use crate::count::count;
use crate::diagram::Diagram;
use crate::ground::{Residual, ground, needs_own_diagram};
use crate::limit::{ATTRIBUTES_MAX, Limit, Limits, OPTIONS_MAX};
use crate::options::{Answers, OptionAnswer, Picked, answers, selection, standing};
use crate::pass::{Scratch, least, options};
use crate::prepare::Prepared;
pub use crate::prepare::{Certainty, NotPrepared};
use crate::race::{Race, race};
use crate::waits::{Waits, waits};
use crate::weights::{Cost, Weight, Weights};

/// A compiled catalog.
#[derive(Debug)]
pub struct Engine {
    diagram: Diagram,
    residual: Residual,
    seed: u64,
    authorities: Authorities,
    /// The policy that was compiled in.
    policy: Option<PolicyTerms>,
}

impl Engine {
    /// Compiles a catalog, with a policy's rules if one is given, for the authorities that bind.
    ///
    /// The seed breaks the ties of the order; it changes the size of the diagram and no answer. It is the winner of
    /// [`Engine::race`], as it was stored when the catalog was published, or 0 where nothing is stored.
    ///
    /// # Errors
    /// When a limit is passed; the error names the rules or attributes.
    pub fn new(
        catalog: &Catalog,
        policy: Option<&PolicyTerms>,
        authorities: &Authorities,
        seed: u64,
        limits: &Limits,
    ) -> Result<Self, Limit> {
        within_sizes(catalog)?;
        let mut ground = ground(catalog, policy, authorities);
        let diagram = compile(&mut ground.network, seed, limits)?;
        let residual = ground.into_residual(limits)?;
        Ok(Self {
            diagram,
            residual,
            seed,
            authorities: authorities.clone(),
            policy: policy.cloned(),
        })
    }

    /// Finds the seed with which [`Engine::new`] makes the smallest diagram within doubling caps; see [`mod@crate::race`].
    ///
    /// For publishing, which stores the seed; serving does not race. The other arguments are those of `new`: another policy
    /// with rules of its own, or other authorities, make another diagram, for which another seed may be the better one.
    /// Distinct gates and cells are not counted here but by `new`.
    ///
    /// # Errors
    /// When the catalog is too large, or no seed is done within the limits; the error names the rules or attributes.
    pub fn race(
        catalog: &Catalog,
        policy: Option<&PolicyTerms>,
        authorities: &Authorities,
        seeds: &[u64],
        limits: &Limits,
    ) -> Result<Race, Limit> {
        within_sizes(catalog)?;
        let mut ground = ground(catalog, policy, authorities);
        race(&mut ground.network, seeds, limits).map(|(race, _)| race)
    }

    /// The seed with which it was compiled.
    #[must_use]
    pub fn seed(&self) -> u64 {
        self.seed
    }

    /// The diagram.
    #[must_use]
    pub fn diagram(&self) -> &Diagram {
        &self.diagram
    }

    /// How many distinct gates there are.
    #[must_use]
    pub fn gate_count(&self) -> usize {
        self.residual.gates.len()
    }

    /// How many distinct cells there are: amounts, and departures from standards that follow other attributes.
    #[must_use]
    pub fn cell_count(&self) -> usize {
        self.residual.cells.len()
    }

    /// How many of the cells are amounts.
    #[must_use]
    pub fn price_cell_count(&self) -> usize {
        self.residual.charge_count()
    }

    /// How many configurations the rules leave before anything is known of an opening: gates open, every option offered.
    ///
    /// What measures, facts, dates and policies rule out is not left out, so that this is what no opening can exceed.
    #[must_use]
    pub fn configurations(&self) -> BigUint {
        count(&self.diagram, &self.open())
    }

    /// The options that no opening can have, whatever is measured, known and waived; attributes in catalog order.
    ///
    /// An option that several conditions rule out together, each possible alone, is not found.
    #[must_use]
    pub fn never_chosen(&self) -> Vec<(AttributeIndex, usize)> {
        let mut best = Vec::new();
        options(&self.diagram, &self.open(), &mut Scratch::default(), &mut best);
        let domains = self.diagram.domains().iter().enumerate();
        let all = domains.flat_map(|(at, domain)| (0..domain.size).map(move |value| (at, value)));
        all.zip(&best)
            .filter(|(_, best)| !best.is_feasible())
            .map(|((at, value), _)| (AttributeIndex(at), value))
            .collect()
    }

    /// Weights under which nothing costs and nothing is closed.
    fn open(&self) -> Weights {
        Weights {
            options: vec![Weight::ZERO; self.diagram.option_count()],
            labels: vec![Weight::ZERO; self.diagram.labels().len()],
        }
    }

    /// Looks at a setting: measures, facts, waivers, book, policy and day.
    ///
    /// Its catalog is the one that was compiled, which is not looked at again. Its policy is the one that was compiled in; an
    /// engine without one takes any policy that needs no diagram of its own, see
    /// [`needs_own_diagram`](crate::ground::needs_own_diagram()).
    ///
    /// # Errors
    /// When the amounts of a unit could add up to more than is counted with, or authorities or policy are others.
    pub fn prepare(&self, setting: &Setting<'_>) -> Result<Prepared, NotPrepared> {
        if *setting.authorities != self.authorities {
            return Err(NotPrepared::OtherAuthorities);
        }
        let policy = setting.policy.map(|policy| &policy.terms);
        let is_compiled_in = match (policy, &self.policy) {
            (Some(terms), None) => !needs_own_diagram(setting.catalog, terms),
            (given, compiled) => given == compiled.as_ref(),
        };
        if !is_compiled_in {
            return Err(NotPrepared::OtherPolicy);
        }
        Prepared::new(&self.residual, &self.diagram, setting)
    }
}

/// Questions. Of two picks of one attribute the later one stands, as where a unit is filled.
impl Engine {
    /// How many configurations hold.
    #[must_use]
    pub fn count(&self, prepared: &Prepared, certainty: Certainty) -> BigUint {
        count(&prepared.diagram, prepared.weights(certainty))
    }

    /// The least subtotal in minor units of any configuration that holds.
    #[must_use]
    pub fn cheapest(&self, prepared: &Prepared, certainty: Certainty) -> Option<i64> {
        let mut scratch = Scratch::default();
        let least = least(&prepared.diagram, prepared.weights(certainty), &mut scratch);
        least.is_feasible().then(|| least.cents())
    }

    /// The fewest picks that must change, and the least subtotal among those; no change when the picks go together.
    #[must_use]
    pub fn selection(&self, prepared: &Prepared, picks: &[Picked]) -> OptionAnswer {
        selection(&prepared.diagram, prepared, &standing(picks))
    }

    /// For every option of every attribute the fewest changes and the least subtotal.
    #[must_use]
    pub fn options(&self, prepared: &Prepared, picks: &[Picked]) -> Vec<Vec<OptionAnswer>> {
        answers(&prepared.diagram, prepared, &standing(picks)).options
    }

    /// Both answers at once: for the picks as they stand, and for every option.
    #[must_use]
    pub fn answers(&self, prepared: &Prepared, picks: &[Picked]) -> Answers {
        answers(&prepared.diagram, prepared, &standing(picks))
    }

    /// What must be known before it is certain that each option can be had.
    #[must_use]
    pub fn waits(&self, prepared: &Prepared, picks: &[Picked]) -> Waits {
        waits(&prepared.diagram, prepared, &standing(picks))
    }

    /// Whole units that keep the picks and hold, best first.
    ///
    /// # Errors
    /// When judging a unit says something else than the diagram.
    pub fn complete(&self, prepared: &Prepared, wish: &Wish<'_>) -> Result<Completion, Disagreement> {
        let picks = standing(wish.picks);
        let wish = Wish {
            picks: &picks,
            ..*wish
        };
        complete(&prepared.diagram, prepared, &wish)
    }
}

/// Refuses a catalog with more attributes or options than values are numbered for.
fn within_sizes(catalog: &Catalog) -> Result<(), Limit> {
    let attributes = &catalog.declarations().attributes;
    let count = attributes.values().count();
    if count > ATTRIBUTES_MAX {
        return Err(Limit::Attributes { count });
    }
    let mut large = attributes
        .iter()
        .filter(|(_, one)| one.options.len() > OPTIONS_MAX);
    match large.next() {
        Some((index, attribute)) => Err(Limit::Options {
            attribute: catalog.name_of(Subject::Attribute(index)),
            count: attribute.options.len(),
        }),
        None => Ok(()),
    }
}
