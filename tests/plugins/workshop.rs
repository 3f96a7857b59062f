//! Builds libraries and puts them into shops.

use std::fs;
use std::path::Path;
use std::process::Command;

use reeve_tests::{TestShop, root};

/// A folder with a small shop, and libraries beside it.
pub(crate) struct Workshop {
    pub(crate) shop: TestShop,
}

impl Workshop {
    /// The small shop of the faults, which has none.
    pub(crate) fn new() -> Self {
        Self { shop: TestShop::copy_of(&root().join("tests/faults/shop")) }
    }

    /// Compiles the small library with some flags; yields its file, as the program is told of it.
    pub(crate) fn library(&self, name: &str, flags: &[&str]) -> String {
        let file = format!("{name}.so");
        compile(&root().join("tests/plugins/library.c"), flags, &["-shared", "-fPIC"], &self.shop.path(&file));
        file
    }

    /// Admits a good library and ties its knot in a design.
    pub(crate) fn with_good_library() -> Self {
        let this = Self::new();
        let file = this.library("good", &[]);
        this.admit(&file).done();
        this.tie("turns = 6");
        this
    }

    pub(crate) fn admit(&self, file: &str) -> reeve_tests::Ran {
        self.shop.run(&["knots", "admit", file, "--yes", "--shop", "shop"])
    }

    /// Ties a band in the place of the tassel's wrap, and puts a tassel into the commission.
    pub(crate) fn tie(&self, parameters: &str) {
        self.shop.replace("shop/designs/tassel.toml", "knot = \"gathering-wrap\"", "knot = \"band\"");
        self.shop.replace("shop/designs/tassel.toml", "{ turns = 6 }", &format!("{{ {parameters} }}"));
        self.shop.replace("shop/commissions/order.toml", "[[line]]", "[[item]]\ndesign = \"tassel\"\n\n[[line]]");
    }

    /// Puts another file in the place of the admitted library, and its digest into the record: as if it had been admitted
    /// before it went wrong.
    pub(crate) fn smuggle(&self, file: &str) {
        let bytes = fs::read(self.shop.path(file)).unwrap();
        self.put(&bytes);
        let own = fs::read_to_string(self.shop.own().join("reeve/admitted.toml")).unwrap();
        let (before, _) = own.split_once("sha256 = ").unwrap();
        let digest = reeve_host::digest_of(&bytes);
        fs::write(self.shop.own().join("reeve/admitted.toml"), format!("{before}sha256 = \"{digest}\"\n")).unwrap();
    }

    /// Puts another file in the place of the library, and its digest into the record: as a shop from elsewhere may bring it.
    pub(crate) fn put(&self, bytes: &[u8]) {
        self.shop.write("shop/knots/plugins/small/library.so", bytes);
        let record = self.shop.read("shop/knots/plugins/small/library.toml");
        let (before, _) = record.split_once("sha256 = ").unwrap();
        let digest = reeve_host::digest_of(bytes);
        self.shop.write("shop/knots/plugins/small/library.toml", format!("{before}sha256 = \"{digest}\"\n"));
    }

    /// No process is left that serves a library of this folder. One that was killed may take a moment to be gone.
    #[track_caller]
    pub(crate) fn assert_nobody_left(&self) {
        const MOMENTS: u32 = 200;
        for _ in 0..MOMENTS {
            if self.left().is_empty() {
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(10));
        }
        assert_eq!(self.left(), Vec::<String>::new(), "left behind");
    }

    /// The processes that serve a library and were started in this folder, by how they were started.
    pub(crate) fn left(&self) -> Vec<String> {
        let folder = fs::canonicalize(self.shop.path("")).unwrap();
        let processes = fs::read_dir("/proc").unwrap().map(|process| process.unwrap().path());
        let here =
            processes.filter(|process| fs::read_link(process.join("cwd")).is_ok_and(|at| at.starts_with(&folder)));
        let told = here.map(|process| fs::read(process.join("cmdline")).unwrap_or_default());
        let told = told.map(|told| String::from_utf8_lossy(&told).replace('\0', " "));
        told.filter(|told| told.contains(reeve_host::SERVE)).collect()
    }
}

/// Compiles a C file with the system's compiler, every warning an error.
pub(crate) fn compile(source: &Path, flags: &[&str], how: &[&str], to: &Path) {
    let mut cc = Command::new("cc");
    cc.args(["-std=c11", "-O1", "-Wall", "-Wextra", "-Wpedantic", "-Werror"]).args(flags).args(how);
    cc.arg("-I").arg(root().join("plugins/kit")).arg(source).args(["-lm", "-o"]).arg(to);
    let output = cc.output().unwrap();
    assert!(output.status.success(), "{flags:?}: {}", String::from_utf8_lossy(&output.stderr));
}

/// Runs cargo in a folder of its own, with this run's cargo; yields whether it went well, and what it said.
pub(crate) fn cargo(folder: &Path, words: &[&str]) -> (bool, String) {
    let mut cargo = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| env!("CARGO").into()));
    cargo.args(words).current_dir(folder).env_remove("CARGO_TARGET_DIR").env_remove("RUSTFLAGS");
    let output = cargo.output().unwrap();
    (output.status.success(), String::from_utf8_lossy(&output.stderr).into_owned())
}
