//! `UnitService`: questions about one unit.
//!
//! Always holds: no question is worked on by an asynchronous thread; each gets one of the threads for blocking work.
//! Later a deadline and a cancellation reach in here, and a session stream is one more method.

use std::sync::Arc;

use tonic::{Request, Response, Status};

use crate::serve::asked::Served;
use crate::serve::fault::{Reason, failed};
use crate::serve::v1::unit_service_server::UnitService;
use crate::serve::v1::{
    CheckUnitRequest, CheckUnitResponse, CompleteUnitRequest, CompleteUnitResponse, EvaluateOptionsRequest,
    EvaluateOptionsResponse,
};
use crate::serve::{check, complete, options};

/// Answers questions about one unit.
pub(super) struct Units {
    pub(super) served: Arc<Served>,
}

impl Units {
    async fn work_out<Q: Send + 'static, A: Send + 'static>(
        &self,
        request: Request<Q>,
        answer: fn(&Served, Q) -> Result<A, Status>,
    ) -> Result<Response<A>, Status> {
        let served = Arc::clone(&self.served);
        let work = move || answer(&served, request.into_inner());
        match tokio::task::spawn_blocking(work).await {
            Ok(answer) => answer.map(Response::new),
            Err(_) => Err(failed(Reason::Internal, "the question was given up")),
        }
    }
}

#[tonic::async_trait]
impl UnitService for Units {
    async fn check_unit(
        &self,
        request: Request<CheckUnitRequest>,
    ) -> Result<Response<CheckUnitResponse>, Status> {
        self.work_out(request, check::answer).await
    }

    async fn evaluate_options(
        &self,
        request: Request<EvaluateOptionsRequest>,
    ) -> Result<Response<EvaluateOptionsResponse>, Status> {
        self.work_out(request, options::answer).await
    }

    async fn complete_unit(
        &self,
        request: Request<CompleteUnitRequest>,
    ) -> Result<Response<CompleteUnitResponse>, Status> {
        self.work_out(request, complete::answer).await
    }
}
