//! `astragal schema`: writes the JSON Schemas of the files, one to standard output or several into a folder.
//!
//! Always holds: nothing but the schema goes to standard output where one is printed; where files are written, each is named.

use std::fs;
use std::path::Path;

use astragal_catalog::schema::{SchemaKind, schema};

use crate::arguments::{SchemaArguments, SchemaFile};
use crate::exit::Exit;
use crate::output::{usage, write_json, write_message, write_text};

/// Writes the schemas that are asked for.
pub(crate) fn run(arguments: &SchemaArguments) -> Exit {
    let kind = arguments.kind.map(kind_of);
    match (&arguments.out, kind) {
        (Some(folder), Some(kind)) => write(folder, &[kind]),
        (Some(folder), None) => write(folder, &SchemaKind::ALL),
        (None, Some(kind)) => write_json(text(kind), Exit::Holds),
        (None, None) => usage(
            "neither a kind of file nor a folder is given",
            "write `astragal schema catalog` for one schema, or `astragal schema --out schemas` for all",
        ),
    }
}

fn write(folder: &Path, kinds: &[SchemaKind]) -> Exit {
    if let Err(error) = fs::create_dir_all(folder) {
        write_message(&format!(
            "error: the folder `{}` could not be made: {error}\n",
            folder.display()
        ));
        return Exit::Unwritten;
    }
    let mut said = String::new();
    let mut exit = Exit::Holds;
    for kind in kinds {
        let path = folder.join(kind.file_name());
        match text(*kind).and_then(|text| fs::write(&path, text).map_err(|error| error.to_string())) {
            Ok(()) => said += &format!("wrote {}\n", path.display()),
            Err(error) => {
                write_message(&format!(
                    "error: `{}` could not be written: {error}\n",
                    path.display()
                ));
                exit = Exit::Unwritten;
            }
        }
    }
    write_text(&said, exit)
}

fn text(kind: SchemaKind) -> Result<String, String> {
    let text = serde_json::to_string_pretty(&schema(kind)).map_err(|error| error.to_string())?;
    Ok(text + "\n")
}

fn kind_of(file: SchemaFile) -> SchemaKind {
    match file {
        SchemaFile::Library => SchemaKind::Library,
        SchemaFile::Catalog => SchemaKind::Catalog,
        SchemaFile::Book => SchemaKind::Book,
        SchemaFile::Policy => SchemaKind::Policy,
        SchemaFile::Order => SchemaKind::Order,
    }
}
