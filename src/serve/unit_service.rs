//! `UnitService`: questions about one unit.
//!
//! Always holds: no question is worked on by an asynchronous thread unless that takes tens of microseconds; every other gets one
//! of the threads for blocking work. One that waits for a thread when its caller goes away, or its deadline passes, is not begun.
//! LIMIT: [`PLACES`] questions wait for a thread or have one; a question beyond them is refused at once.
//! Later a session stream is one more method.

use std::sync::Arc;

use tokio::task::JoinSet;
use tonic::{Request, Response, Status};

use crate::serve::asked::{Arrived, Served};
use crate::serve::deadline::Deadline;
use crate::serve::fault::{Reason, failed};
use crate::serve::v1::unit_service_server::UnitService;
use crate::serve::v1::{
    CheckUnitRequest, CheckUnitResponse, CompleteUnitRequest, CompleteUnitResponse, EvaluateOptionsRequest,
    EvaluateOptionsResponse,
};
use crate::serve::{check, complete, options};

/// How many questions wait for a thread or have one, of all clients together.
pub(super) const PLACES: usize = 256;

/// Answers questions about one unit.
pub(super) struct Units {
    pub(super) served: Arc<Served>,
}

impl Units {
    /// Has a thread for blocking work answer.
    async fn work_out<A: Send + 'static>(
        &self,
        deadline: Deadline,
        answer: impl FnOnce(&Served) -> Result<A, Status> + Send + 'static,
    ) -> Result<Response<A>, Status> {
        let served = Arc::clone(&self.served);
        let Ok(place) = Arc::clone(&served.places).try_acquire_owned() else {
            let message = format!("{PLACES} questions wait already; ask again later");
            return Err(failed(Reason::Busy, &message));
        };
        // Work that has not begun is given up when the set is dropped.
        let mut work = JoinSet::new();
        work.spawn_blocking(move || {
            // Taken along, so that a question nobody waits for any more holds its place for as long as it is worked on.
            let _place = place;
            deadline.check()?;
            answer(&served)
        });
        match work.join_next().await {
            Some(Ok(answer)) => answer.map(Response::new),
            Some(Err(_)) | None => Err(failed(Reason::Internal, "the question was given up")),
        }
    }
}

#[tonic::async_trait]
impl UnitService for Units {
    async fn check_unit(
        &self,
        request: Request<CheckUnitRequest>,
    ) -> Result<Response<CheckUnitResponse>, Status> {
        let deadline = Deadline::of(request.extensions());
        let arrived = Arrived::new(&self.served, request.into_inner().unit)?;
        let answer = |served: &Served| check::answer(served, arrived);
        self.work_out(deadline, answer).await
    }

    async fn evaluate_options(
        &self,
        request: Request<EvaluateOptionsRequest>,
    ) -> Result<Response<EvaluateOptionsResponse>, Status> {
        let deadline = Deadline::of(request.extensions());
        let EvaluateOptionsRequest { unit, view } = request.into_inner();
        let arrived = Arrived::new(&self.served, unit)?;
        if arrived.is_quick() {
            deadline.check()?;
            return options::answer(&self.served, arrived, view).map(Response::new);
        }
        let answer = move |served: &Served| options::answer(served, arrived, view);
        self.work_out(deadline, answer).await
    }

    async fn complete_unit(
        &self,
        request: Request<CompleteUnitRequest>,
    ) -> Result<Response<CompleteUnitResponse>, Status> {
        let deadline = Deadline::of(request.extensions());
        let mut request = request.into_inner();
        let arrived = Arrived::new(&self.served, request.unit.take())?;
        let answer = move |served: &Served| complete::answer(served, arrived, &request, deadline);
        self.work_out(deadline, answer).await
    }
}
