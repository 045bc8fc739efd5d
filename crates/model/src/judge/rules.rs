//! Judges the rules that a catalog and a policy declare.

use crate::evaluate::Environment;
use crate::expression::Subject;
use crate::judge::find::{Named, direct_reads, failing_state, finding, standing};
use crate::judge::report::{RuleFinding, RuleName};
use crate::rule::{Requirement, Rule};
use crate::setting::Setting;
use crate::value::Outcome;

/// The findings of all declared rules: the catalog's, then the policy's, in file order.
pub(crate) fn declared_findings(setting: &Setting<'_>, environment: &Environment<'_>) -> Vec<RuleFinding> {
    let of_catalog = environment.declarations.rules.iter().enumerate();
    let of_policy = setting
        .policy
        .iter()
        .flat_map(|policy| policy.terms.rules.iter().enumerate());
    let named = of_catalog
        .map(|(position, rule)| (RuleName::Catalog(position), rule))
        .chain(of_policy.map(|(position, rule)| (RuleName::Policy(position), rule)));
    named
        .filter_map(|(name, rule)| rule_finding(setting, environment, name, rule))
        .collect()
}

fn rule_finding(
    setting: &Setting<'_>,
    environment: &Environment<'_>,
    name: RuleName,
    rule: &Rule,
) -> Option<RuleFinding> {
    let state = failing_state(outcome(environment, rule))?;
    let mut direct: Vec<Subject> = rule.when.iter().flat_map(direct_reads).collect();
    let required = match &rule.requirement {
        Requirement::Expression(expression) => direct_reads(expression),
        Requirement::Allowed(table) | Requirement::Forbidden(table) => table.columns.clone(),
    };
    for subject in required {
        if !direct.contains(&subject) {
            direct.push(subject);
        }
    }
    let named = Named {
        rule: name,
        id: rule.id.clone(),
        authority: rule.authority.clone(),
    };
    let message = rule.message.fill(|piece| environment.show_piece(piece));
    let mut finding = finding(environment, named, state, message, &direct);
    finding.part = rule.part;
    finding.standing = standing(setting, rule);
    Some(finding)
}

/// `!when || requirement`
fn outcome(environment: &Environment<'_>, rule: &Rule) -> Outcome {
    let not_when = rule
        .when
        .as_ref()
        .map_or_else(|| Outcome::truth(false), |when| environment.evaluate(when).not());
    Outcome::any([not_when, requirement(environment, &rule.requirement)])
}

fn requirement(environment: &Environment<'_>, requirement: &Requirement) -> Outcome {
    match requirement {
        Requirement::Expression(expression) => environment.evaluate(expression),
        Requirement::Allowed(table) => environment.some_row_matches(table, true),
        Requirement::Forbidden(table) => environment.some_row_matches(table, false).not(),
    }
}
