//! What the service worker fetches once over a poor line: its size, and how much is allowed.

use crate::seal::build_list;
use anyhow::Result;
use flate2::Compression;
use flate2::write::GzEncoder;
use std::fmt;
use std::fs;
use std::io::Write;
use std::path::Path;

/// The most the whole build may weigh, in bytes after gzip.
pub(crate) const LIMIT: usize = 300_000;

/// The weight of a build, each file compressed by itself as a host would send it.
#[derive(Debug, Default)]
pub(crate) struct Weight {
    /// Each file's path, bytes, and bytes after gzip.
    files: Vec<(String, usize, usize)>,
}

/// Weighs every file the service worker keeps.
pub(crate) fn weigh(dist: &Path) -> Result<Weight> {
    let mut weight = Weight::default();
    for path in build_list(dist)?.into_keys() {
        let bytes = fs::read(dist.join(&path))?;
        weight.files.push((path, bytes.len(), gzipped(&bytes)?));
    }
    Ok(weight)
}

impl Weight {
    /// Bytes after gzip, in all.
    pub(crate) fn gzipped(&self) -> usize {
        self.files.iter().map(|(_, _, gzipped)| gzipped).sum()
    }

    /// True if a poor line can be asked to carry it.
    pub(crate) fn is_allowed(&self) -> bool {
        self.gzipped() <= LIMIT
    }
}

impl fmt::Display for Weight {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (path, raw, gzipped) in &self.files {
            writeln!(out, "{raw:>9} {gzipped:>9}  {path}")?;
        }
        let raw: usize = self.files.iter().map(|(_, raw, _)| raw).sum();
        let (files, gzipped, limit) = (self.files.len(), self.gzipped(), LIMIT / 1000);
        write!(
            out,
            "{raw:>9} {gzipped:>9}  bytes in {files} files, plain and gzipped (at most {limit} kB gzipped)"
        )
    }
}

fn gzipped(bytes: &[u8]) -> Result<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weight(gzipped: &[usize]) -> Weight {
        let file = |size: &usize| ("a".to_owned(), *size, *size);
        Weight {
            files: gzipped.iter().map(file).collect(),
        }
    }

    #[test]
    fn the_limit_is_on_the_sum() {
        assert!(weight(&[200_000, 100_000]).is_allowed());
        assert!(!weight(&[200_000, 100_001]).is_allowed());
    }

    #[test]
    fn what_repeats_weighs_less() -> Result<()> {
        assert!(gzipped(&[b'a'; 10_000])? < 100);
        Ok(())
    }
}
