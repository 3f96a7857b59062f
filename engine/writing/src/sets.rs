//! Papers that belong together: a folder of their own, seen whole or not at all, and never changed afterwards.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use crate::places::{MadeFolders, keep_names, put_new};
use crate::refused::WritingError;
use crate::workplace::Workplace;

/// A set of papers that is written already, beside its place.
///
/// A set never takes the place of another, whoever wrote that: where its name is taken by something else it gets the next
/// number. So nobody can read half of an old set and half of a new one, however they look.
#[derive(Debug)]
pub struct Staged {
    work: Workplace,
    made: MadeFolders,
    folder: PathBuf,
    papers: BTreeMap<String, Vec<u8>>,
}

impl Staged {
    /// Writes papers beside their place in a folder, which is made if need be.
    ///
    /// # Errors
    /// [`WritingError`], naming the paper. Whatever fails for want of room fails here.
    pub fn new(folder: &Path, papers: &[(&str, &[u8])]) -> Result<Self, WritingError> {
        let refused = WritingError::at(folder);
        let made = MadeFolders::down_to(folder).map_err(&refused)?;
        let work = Workplace::within(folder).map_err(&refused)?;
        for (name, bytes) in papers {
            work.write(&Path::new("set").join(name), bytes).map_err(WritingError::at(&folder.join(name)))?;
        }
        let papers = papers.iter().map(|(name, bytes)| ((*name).to_owned(), bytes.to_vec())).collect();
        Ok(Self { work, made, folder: folder.to_owned(), papers })
    }

    /// Whether a name is free for this set: nothing stands there, or the very same set.
    pub fn fits(&self, name: &str) -> bool {
        fs::symlink_metadata(self.folder.join(name)).is_err() || self.is_there(name)
    }

    /// Whether the very same papers stand there already.
    fn is_there(&self, name: &str) -> bool {
        let at = self.folder.join(name);
        let Ok(entries) = fs::read_dir(&at) else { return false };
        let same = |(paper, bytes): (&String, &Vec<u8>)| {
            let at = at.join(called(name, paper));
            let length = fs::symlink_metadata(&at).ok().filter(fs::Metadata::is_file).map(|about| about.len());
            length == Some(bytes.len() as u64)
                && reeve_door::read(&at, bytes.len() as u64).is_ok_and(|found| found == *bytes)
        };
        entries.count() == self.papers.len() && self.papers.iter().all(same)
    }

    /// Puts the set into its folder in one step, under a name: the paths of its papers, and whether they are new.
    ///
    /// # Errors
    /// [`WritingError`], of kind `AlreadyExists` where something else came there meanwhile: the set is then to be had back.
    pub fn put(self, name: &str) -> Result<(Vec<PathBuf>, bool), (Box<Self>, WritingError)> {
        let at = self.folder.join(name);
        let paths = self.papers.keys().map(|paper| at.join(called(name, paper))).collect();
        if self.is_there(name) {
            return Ok((paths, false));
        }
        match self.named(name).and_then(|set| put_new(&set, &at)) {
            Ok(()) => {
                self.made.keep();
                Ok((paths, true))
            }
            Err(error) => Err((Box::new(self), WritingError::new(&at, error))),
        }
    }

    /// The set with the name before that of every paper: one that is sent on still says whose it is.
    fn named(&self, name: &str) -> io::Result<PathBuf> {
        let set = self.work.path(Path::new("named").join(name));
        fs::create_dir_all(&set)?;
        for (paper, bytes) in &self.papers {
            let (from, to) = (self.work.path(Path::new("set").join(paper)), set.join(called(name, paper)));
            // A second name takes no room; where there are none the paper is written again.
            fs::hard_link(&from, &to).or_else(|_| fs::write(&to, bytes))?;
        }
        keep_names(&set.join("any"));
        Ok(set)
    }
}

fn called(name: &str, paper: &str) -> String {
    format!("{name}-{paper}")
}
