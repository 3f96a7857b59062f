//! The folders that a shop reads its own files from: nothing else goes there.

use std::path::{Component, Path, PathBuf};

use crate::folder::SHOP_FILE;
use crate::shop::{COMMISSIONS, DESIGNS, KNOTS, STORE, TEMPLATES};

/// Every folder that a shop reads.
const OWN: [&str; 5] = [COMMISSIONS, DESIGNS, KNOTS, STORE, TEMPLATES];

/// The shop and the folder of its own files that a folder is, or is within, links followed; the folder may not be there
/// yet. `shop` is the one that is worked with, if one is.
pub fn own_folder_around(folder: &Path, shop: Option<&Path>) -> Option<(PathBuf, &'static str)> {
    let real = real_path(folder);
    for above in real.ancestors() {
        let Some(shop) = above.parent() else { break };
        let own = OWN.into_iter().find(|own| above.file_name().is_some_and(|name| is_called(name, own)));
        if let Some(own) = own.filter(|_| shop.join(SHOP_FILE).is_file()) {
            return Some((shop.to_owned(), own));
        }
    }
    // A folder of a shop may itself be a link to somewhere else.
    let shops = real.ancestors().chain(folder.ancestors()).chain(shop);
    shops.filter(|shop| shop.join(SHOP_FILE).is_file()).find_map(|shop| {
        let own = OWN.into_iter().find(|own| shop.join(own).canonicalize().is_ok_and(|own| real.starts_with(own)));
        own.map(|own| (shop.to_owned(), own))
    })
}

/// On some systems letters' case makes no other name.
fn is_called(name: &std::ffi::OsStr, own: &str) -> bool {
    if cfg!(any(windows, target_os = "macos")) { name.eq_ignore_ascii_case(own) } else { name == own }
}

/// Where a path really leads, links followed as far as there is something.
pub fn real_path(path: &Path) -> PathBuf {
    let start = std::env::current_dir().unwrap_or_default();
    let mut real = PathBuf::new();
    for part in start.join(path).components() {
        match part {
            Component::ParentDir => drop(real.pop()),
            Component::CurDir => {}
            part => {
                real.push(part);
                real = real.canonicalize().unwrap_or(real);
            }
        }
    }
    real
}
