//! A host's folder of its own for one test, whose files change as they do where a newer build is put up.

use std::fs;
use std::path::{Path, PathBuf};

use tempfile::TempDir;

/// A folder to serve; removed when it is dropped.
#[derive(Debug)]
pub struct Site {
    folder: TempDir,
}

impl Site {
    /// A folder that holds this build.
    pub fn of(build: &Path) -> Site {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let site = Site { folder };
        site.take_up(build);
        site
    }

    /// Where it is.
    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Puts this build in the place of whatever is there.
    pub fn take_up(&self, build: &Path) {
        empty(self.folder()).expect("the old build can be removed");
        copy(build, self.folder()).unwrap_or_else(|error| {
            panic!("{} cannot be put up: {error}", build.display());
        });
    }

    /// Loses the file whose name ends like this: the host answers 404.
    pub fn lose(&self, ending: &str) {
        fs::remove_file(self.file(ending)).expect("the file can be removed");
    }

    /// Alters one bit in the middle of the file whose name ends like this.
    pub fn alter(&self, ending: &str) {
        let path = self.file(ending);
        let mut bytes = fs::read(&path).expect("the file can be read");
        let middle = bytes.len() / 2;
        bytes[middle] ^= 1;
        fs::write(path, bytes).expect("the file can be written");
    }

    /// Has other words in the file whose name ends like this; they stand there once.
    pub fn reword(&self, ending: &str, words: &str, others: &str) {
        let path = self.file(ending);
        let text = fs::read_to_string(&path).expect("the file holds text");
        assert_eq!(text.matches(words).count(), 1, "{words} in {ending}");
        fs::write(path, text.replace(words, others)).expect("the file can be written");
    }

    fn file(&self, ending: &str) -> PathBuf {
        let listed = fs::read_dir(self.folder()).expect("the folder can be read");
        let mut paths = listed.flatten().map(|entry| entry.path());
        let found = paths.find(|path| path.display().to_string().ends_with(ending));
        found.unwrap_or_else(|| panic!("the build holds no file …{ending}"))
    }
}

fn empty(folder: &Path) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            fs::remove_dir_all(path)?;
        } else {
            fs::remove_file(path)?;
        }
    }
    Ok(())
}

fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
