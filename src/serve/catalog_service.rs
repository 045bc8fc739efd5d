//! `CatalogService`: what there is to choose and to know.
//!
//! A page token is the id of the last catalog of the page before, so that it stays good when catalogs come and go.

use std::sync::Arc;

use tonic::{Request, Response, Status};

use crate::serve::asked::{Served, catalog};
use crate::serve::describe;
use crate::serve::fault::{Faults, Reason};
use crate::serve::v1::catalog_service_server::CatalogService;
use crate::serve::v1::{GetCatalogRequest, GetCatalogResponse, ListCatalogsRequest, ListCatalogsResponse};

/// How many catalogs one page has at most.
const PAGE_MAX: usize = 50;

/// Describes catalogs.
pub(super) struct Catalogs {
    pub(super) served: Arc<Served>,
}

#[tonic::async_trait]
impl CatalogService for Catalogs {
    async fn get_catalog(
        &self,
        request: Request<GetCatalogRequest>,
    ) -> Result<Response<GetCatalogResponse>, Status> {
        let mut faults = Faults::default();
        let name = &request.get_ref().name;
        match catalog(name, &self.served.library, "name", &mut faults) {
            Some(product) => Ok(Response::new(GetCatalogResponse {
                catalog: Some(describe::catalog(product)),
            })),
            None => Err(faults.status()),
        }
    }

    async fn list_catalogs(
        &self,
        request: Request<ListCatalogsRequest>,
    ) -> Result<Response<ListCatalogsResponse>, Status> {
        let ListCatalogsRequest {
            page_size,
            page_token,
        } = request.into_inner();
        let mut faults = Faults::default();
        let size = match usize::try_from(page_size) {
            Ok(0) => PAGE_MAX,
            Ok(size) => size.min(PAGE_MAX),
            Err(_) => {
                faults.push(Reason::OutOfRange, "page_size", "a page size below zero");
                0
            }
        };
        if !page_token.is_empty() && self.served.library.product(&page_token).is_none() {
            let message = "this is no token of a page of this service";
            faults.push(Reason::BadPageToken, "page_token", message);
        }
        faults.into_result()?;
        let after = self.served.library.products();
        let mut after = after
            .filter(|product| product.id() > page_token.as_str())
            .peekable();
        let page: Vec<_> = after.by_ref().take(size).collect();
        let next = page.last().filter(|_| after.peek().is_some());
        Ok(Response::new(ListCatalogsResponse {
            next_page_token: next.map(|product| product.id().to_owned()).unwrap_or_default(),
            catalogs: page.into_iter().map(describe::head).collect(),
        }))
    }
}
