//! A shop in a folder of its own, taken away when the test is over.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Stdio};

use reeve_host::Program;
use reeve_shop::{Admissions, Folder};
use tempfile::TempDir;

use crate::program::{Ran, command, command_by, own, ran, reeve, run};

/// The day that the demo's pages are kept as of.
pub const DEMO_DAY: &str = "2026-11-25";

/// The program that a shop opened in a test starts for libraries of knots.
pub fn host() -> Program {
    Program::at(reeve().to_owned())
}

/// Every file below a folder, with its bytes.
pub type Tree = BTreeMap<PathBuf, Vec<u8>>;

/// A folder of its own, with a shop in `shop/`.
#[derive(Debug)]
pub struct TestShop {
    folder: TempDir,
}

impl TestShop {
    /// An empty folder, without a shop.
    pub fn none() -> Self {
        Self { folder: TempDir::new().unwrap() }
    }

    /// The starter shop.
    pub fn starter() -> Self {
        let this = Self::none();
        Folder::begin(&this.path("shop")).unwrap();
        this
    }

    /// A copy of a folder of the tests as the shop.
    pub fn copy_of(folder: &Path) -> Self {
        let this = Self::none();
        for (path, bytes) in tree_of(folder) {
            this.write(&format!("shop/{}", path.display()), bytes);
        }
        this
    }

    /// A path beneath the folder that holds the shop.
    pub fn path(&self, below: &str) -> PathBuf {
        self.folder.path().join(below)
    }

    /// The shop, for the library, with what is wrong with it.
    pub fn open(&self) -> reeve_shop::Answer<reeve_shop::Shop> {
        let admissions = Admissions::read(Some(self.own().join("reeve")));
        reeve_shop::Shop::open(Folder::Disk(self.path("shop")), host(), admissions)
    }

    /// The folder that the system keeps for the maker's own, outside the shop.
    pub fn own(&self) -> PathBuf {
        own(self.folder.path())
    }

    /// Starts the program in the folder that holds the shop, and does not wait for it.
    pub fn start(&self, words: &[&str]) -> Child {
        let mut command = command(self.folder.path(), words);
        command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap()
    }

    /// Writes a file, and the folders above it.
    pub fn write(&self, below: &str, bytes: impl AsRef<[u8]>) {
        let at = self.path(below);
        fs::create_dir_all(at.parent().unwrap()).unwrap();
        fs::write(at, bytes).unwrap();
    }

    /// A file's text.
    #[track_caller]
    pub fn read(&self, below: &str) -> String {
        fs::read_to_string(self.path(below)).unwrap()
    }

    /// Puts words in the place of others, which the file must hold.
    #[track_caller]
    pub fn replace(&self, below: &str, from: &str, to: &str) {
        let text = self.read(below);
        assert!(text.contains(from), "{below} does not hold {from:?}");
        self.write(below, text.replacen(from, to, 1));
    }

    /// Runs the program in the folder that holds the shop.
    pub fn run(&self, words: &[&str]) -> Ran {
        run(self.folder.path(), words)
    }

    /// Runs the program in the folder that holds the shop, started by another program, which is told of it first.
    pub fn run_by(&self, starter: &Path, words: &[&str]) -> Ran {
        ran(command_by(Some(starter), self.folder.path(), words))
    }

    /// Every file in the folder, the shop's and others, but for what is kept only to save time.
    pub fn tree(&self) -> Tree {
        let mut tree = tree_of(self.folder.path());
        tree.retain(|path, _| !path.starts_with("own/cache"));
        tree
    }
}

/// Every file below a folder, with its bytes, by its path from there.
pub fn tree_of(folder: &Path) -> Tree {
    let relative = |path: &Path| path.strip_prefix(folder).unwrap().to_owned();
    files_below(folder).into_iter().map(|path| (relative(&path), fs::read(&path).unwrap())).collect()
}

/// Every file below a folder, in order.
pub fn files_below(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() { files.extend(files_below(&path)) } else { files.push(path) }
    }
    files.sort_unstable();
    files
}
