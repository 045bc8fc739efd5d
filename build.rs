//! Compiles the public contract in `proto/` into Rust, and into the descriptors that reflection hands out.
//!
//! Pure Rust: no `protoc` is needed. Descriptors carry no comments; the generated Rust does.

use std::error::Error;
use std::path::PathBuf;

/// The files with services; what they import comes with them.
const SERVICES: [&str; 2] = [
    "astragal/v1/catalog_service.proto",
    "astragal/v1/unit_service.proto",
];

fn main() -> Result<(), Box<dyn Error>> {
    println!("cargo:rerun-if-changed=proto");
    let out = PathBuf::from(std::env::var("OUT_DIR")?);
    let mut compiler = protox::Compiler::new(["proto"])?;
    compiler.include_imports(true).open_files(SERVICES)?;
    std::fs::write(out.join("descriptors.bin"), compiler.encode_file_descriptor_set())?;
    compiler.include_source_info(true);
    tonic_prost_build::configure()
        .build_transport(false)
        .include_file("proto.rs")
        .compile_fds(compiler.file_descriptor_set())?;
    Ok(())
}
