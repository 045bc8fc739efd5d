//! The answer to `CheckUnit`: a unit filled as in a quote, and judged.
//!
//! Cost: that of a quote of one opening: judging once, and at most two completions.

use astragal_core::complete::Aim;
use tonic::Status;

use crate::quote::ask::UsedOn;
use crate::quote::completion::quoted;
use crate::serve::asked::{Asked, Served};
use crate::serve::fault::{Reason, failed};
use crate::serve::finding;
use crate::serve::v1::{CheckUnitRequest, CheckUnitResponse};
use crate::text::CAUTION;

/// Answers the request.
pub(super) fn answer(served: &Served, request: CheckUnitRequest) -> Result<CheckUnitResponse, Status> {
    let (asked, ()) = Asked::new(served, request.unit, |_, _| ())?;
    let setting = asked.setting()?;
    let engine = Some(Ok(asked.engine()));
    let quoted = quoted(&setting, &asked.request, engine, Aim::Standard)
        .map_err(|error| failed(Reason::Internal, &error))?;
    let on = UsedOn {
        used: asked.used()?,
        date: asked.date(),
    };
    let judgement = &quoted.judgement;
    Ok(CheckUnitResponse {
        revisions: Some(asked.revisions()),
        verdict: finding::verdict(judgement.verdict).into(),
        rules: finding::rules(on, &quoted.unit, judgement),
        choices: finding::choices(on, &quoted.unit),
        open: finding::open(on, judgement),
        figures: finding::figures(on, judgement),
        price: Some(finding::price(on, judgement)),
        notices: finding::notices(on, judgement),
        caution: CAUTION.to_owned(),
    })
}
