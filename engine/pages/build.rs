//! Has the program built again when a language is added.

fn main() {
    println!("cargo:rerun-if-changed=../../templates/phrases");
}
