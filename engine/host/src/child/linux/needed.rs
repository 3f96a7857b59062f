//! What a library says it needs: the names in its dynamic section.
//!
//! The loader reads them again for itself. Where it finds more than stands here, it opens a file and is refused.

use std::fs::File;

use object::elf::{DT_NEEDED, DT_STRSZ, DT_STRTAB, Dyn64, DynamicTag, FileHeader64, PT_LOAD};
use object::read::elf::{Dyn, FileHeader, ProgramHeader};
use object::{Endianness, ReadCache, StringTable};

use crate::error::LibraryError;

/// More than any library has.
const MOST: usize = 64;

/// The names of the libraries that a library is linked with.
pub(super) fn needed(library: &File) -> Result<Vec<String>, LibraryError> {
    // Only what is asked for is read: a library may be large.
    let cache = ReadCache::new(library);
    let names = names(&cache).map_err(|error| LibraryError::NotALibrary(error.to_string()))?;
    if names.len() > MOST {
        return Err(LibraryError::NotALibrary(format!("it needs {} others, and {MOST} are allowed", names.len())));
    }
    match names.iter().find(|name| name.contains('/')) {
        Some(path) => {
            Err(LibraryError::NotALibrary(format!("it needs the file {path}, and only the system's are loaded")))
        }
        None => Ok(names),
    }
}

fn names(data: &ReadCache<&File>) -> object::read::Result<Vec<String>> {
    let header = FileHeader64::<Endianness>::parse(data)?;
    let endian = header.endian()?;
    let segments = header.program_headers(endian, data)?;
    let mut entries: Vec<Dyn64<Endianness>> = Vec::new();
    for segment in segments {
        entries.extend(segment.dynamic(endian, data)?.unwrap_or_default());
    }
    let value = |entry: &Dyn64<Endianness>| entry.d_val(endian);
    let find = |tag: DynamicTag| entries.iter().find(|entry| entry.tag(endian) == tag).map(value);
    let (Some(address), Some(size)) = (find(DT_STRTAB), find(DT_STRSZ)) else { return Ok(Vec::new()) };
    let start = segments.iter().find_map(|segment| {
        let (from, length) = (segment.p_vaddr(endian), segment.p_filesz(endian));
        let into = address.checked_sub(from).filter(|into| *into < length)?;
        (segment.p_type(endian) == PT_LOAD).then(|| segment.p_offset(endian).checked_add(into)).flatten()
    });
    let Some(start) = start else { return Ok(Vec::new()) };
    let texts = StringTable::new(data, start, start.saturating_add(size));
    let named = entries.iter().filter(|entry| entry.tag(endian) == DT_NEEDED);
    let offsets = named.filter_map(|entry| u32::try_from(value(entry)).ok());
    let names = offsets.filter_map(|offset| texts.get(offset).ok());
    Ok(names.map(|name| String::from_utf8_lossy(name).into_owned()).collect())
}
