//! The answer to `CheckUnit`: a unit completed as in a quote, and judged.
//!
//! Cost: judging once, and where standards alone do not hold one completion.

use astragal_core::complete::Aim;
use tonic::Status;

use crate::quote::completion::{quoted, standard};
use crate::quote::words::CAUTION;
use crate::serve::asked::{Arrived, Asked, Served};
use crate::serve::fault::{Reason, failed};
use crate::serve::fill_in::fill_in;
use crate::serve::finding;
use crate::serve::v1::CheckUnitResponse;

/// Answers the request.
pub(super) fn answer(served: &Served, arrived: Arrived) -> Result<CheckUnitResponse, Status> {
    let (asked, ()) = Asked::new(served, arrived, |_, _| ())?;
    let setting = asked.setting()?;
    let quoted = match &asked.known.prepared {
        Ok(prepared) => standard(asked.engine(), prepared, &setting, &asked.request),
        // What is filled in with standards alone is judged all the same.
        Err(error) => quoted(
            &setting,
            &asked.request,
            Some(Err(error.to_string())),
            Aim::Standard,
        ),
    };
    let quoted = quoted.map_err(|error| failed(Reason::Internal, &error))?;
    let on = asked.on()?;
    let judgement = &quoted.judgement;
    Ok(CheckUnitResponse {
        revisions: Some(asked.revisions()),
        verdict: finding::verdict(quoted.verdict()).into(),
        rules: finding::rules(on, &quoted.unit, judgement, &asked.request.waivers),
        choices: finding::choices(on, &quoted.unit),
        fill_in: Some(fill_in(on, &quoted.completion)),
        open: finding::open(on, judgement),
        figures: finding::figures(on, judgement),
        price: Some(finding::price(on, judgement)),
        notices: finding::notices(on, judgement),
        caution: CAUTION.to_owned(),
    })
}
