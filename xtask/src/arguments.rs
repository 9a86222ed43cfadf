//! What may be typed after `cargo xtask`.

use anyhow::{Result, bail};
use lexopt::prelude::*;
use std::path::PathBuf;

/// What `cargo xtask help` prints.
pub(crate) const HELP: &str = "\
cargo xtask serve [--dev] [--port N] [--under /path/]
    set up, build and serve the app on this machine; --dev rebuilds when a file changes
cargo xtask test      everything that must hold: format, lints, all tests
cargo xtask ready     the fast loop: format, lints on this machine, core tests
cargo xtask dist      build the folder any static https host can serve
cargo xtask measure   the figures the README quotes
cargo xtask pictures  the README's pictures, taken anew of the app's demonstration
cargo xtask soak      what takes too long for every run: 200 kills of the browser, 100 000 histories
cargo xtask fuzz [minutes] [--keep]
    feed the readers of files with what a fuzzer makes up, 30 minutes in all unless told;
    --keep puts what reached new code into tests/fuzz/corpus
cargo xtask serve-dist --dir D [--port N] [--under /path/] [--until-eof]
    serve a folder as it stands, for tests; --until-eof until the standard input ends
cargo xtask dist-newer
    make a newer build of what `dist` built last, for tests of new versions";

/// One command with its options.
#[derive(Debug, PartialEq)]
pub(crate) enum Command {
    Serve(Serve),
    ServeDist(ServeDist),
    Test,
    Dist,
    DistNewer,
    Ready,
    Measure,
    Pictures,
    Soak,
    Fuzz(Fuzz),
    Help,
}

/// Options of `serve`.
#[derive(Debug, Default, PartialEq)]
pub(crate) struct Serve {
    /// Build without optimising and again whenever a source file changes.
    pub(crate) dev: bool,
    /// The port; none means the usual one.
    pub(crate) port: Option<u16>,
    /// The path the app is served under, `/` when empty.
    pub(crate) under: String,
}

/// Options of `serve-dist`.
#[derive(Debug, Default, PartialEq)]
pub(crate) struct ServeDist {
    /// The folder to serve.
    pub(crate) dir: PathBuf,
    /// The port; 0 lets the system choose a free one.
    pub(crate) port: u16,
    /// The path the folder is served under, `/` when empty.
    pub(crate) under: String,
    /// Until its standard input ends, as it does with the program that holds it.
    pub(crate) until_eof: bool,
}

/// Options of `fuzz`.
#[derive(Debug, PartialEq)]
pub(crate) struct Fuzz {
    /// For how long, over all targets.
    pub(crate) minutes: u64,
    /// Put what reached new code into the checkout.
    pub(crate) keep: bool,
}

/// Reads this process's own arguments.
pub(crate) fn read() -> Result<Command> {
    parse(lexopt::Parser::from_env())
}

fn parse(mut parser: lexopt::Parser) -> Result<Command> {
    let name = match parser.next()? {
        Some(Value(name)) => name.string()?,
        Some(Short('h') | Long("help")) | None => return Ok(Command::Help),
        Some(other) => return Err(other.unexpected().into()),
    };
    match name.as_str() {
        "serve" => serve(parser),
        "serve-dist" => serve_dist(parser),
        "test" => alone(parser, Command::Test),
        "dist" => alone(parser, Command::Dist),
        "dist-newer" => alone(parser, Command::DistNewer),
        "ready" => alone(parser, Command::Ready),
        "measure" => alone(parser, Command::Measure),
        "pictures" => alone(parser, Command::Pictures),
        "soak" => alone(parser, Command::Soak),
        "fuzz" => fuzz(parser),
        "help" => Ok(Command::Help),
        _ => bail!("there is no command `{name}`\n{HELP}"),
    }
}

fn alone(mut parser: lexopt::Parser, command: Command) -> Result<Command> {
    match parser.next()? {
        None => Ok(command),
        Some(other) => Err(other.unexpected().into()),
    }
}

fn serve(mut parser: lexopt::Parser) -> Result<Command> {
    let mut options = Serve::default();
    while let Some(argument) = parser.next()? {
        match argument {
            Long("dev") => options.dev = true,
            Long("port") => options.port = Some(parser.value()?.parse()?),
            Long("under") => options.under = parser.value()?.string()?,
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(Command::Serve(options))
}

fn serve_dist(mut parser: lexopt::Parser) -> Result<Command> {
    let mut options = ServeDist::default();
    while let Some(argument) = parser.next()? {
        match argument {
            Long("dir") => options.dir = parser.value()?.into(),
            Long("port") => options.port = parser.value()?.parse()?,
            Long("under") => options.under = parser.value()?.string()?,
            Long("until-eof") => options.until_eof = true,
            other => return Err(other.unexpected().into()),
        }
    }
    if options.dir.as_os_str().is_empty() {
        bail!("`serve-dist` needs `--dir` and the folder to serve");
    }
    Ok(Command::ServeDist(options))
}

fn fuzz(mut parser: lexopt::Parser) -> Result<Command> {
    let mut options = Fuzz {
        minutes: 30,
        keep: false,
    };
    while let Some(argument) = parser.next()? {
        match argument {
            Value(minutes) => options.minutes = minutes.parse()?,
            Long("keep") => options.keep = true,
            other => return Err(other.unexpected().into()),
        }
    }
    if options.minutes == 0 {
        bail!("`fuzz` takes at least one minute");
    }
    Ok(Command::Fuzz(options))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn typed(words: &[&str]) -> Result<Command> {
        parse(lexopt::Parser::from_args(words))
    }

    #[test]
    fn serve_takes_its_options() {
        let options = Serve {
            dev: true,
            port: Some(9000),
            under: "/a/".to_owned(),
        };
        let words = ["serve", "--dev", "--port", "9000", "--under=/a/"];
        assert_eq!(typed(&words).unwrap(), Command::Serve(options));
    }

    #[test]
    fn a_word_too_many_is_refused() {
        assert!(typed(&["test", "quick"]).is_err());
        assert!(typed(&["serve", "--port", "high"]).is_err());
    }

    #[test]
    fn fuzzing_takes_a_number_of_minutes() {
        let options = |minutes, keep| Command::Fuzz(Fuzz { minutes, keep });
        assert_eq!(typed(&["fuzz"]).unwrap(), options(30, false));
        assert_eq!(typed(&["fuzz", "5", "--keep"]).unwrap(), options(5, true));
        assert!(typed(&["fuzz", "0"]).is_err() && typed(&["fuzz", "long"]).is_err());
    }

    #[test]
    fn an_unknown_command_lists_the_known() {
        let told = typed(&["deploy"]).unwrap_err().to_string();
        assert!(told.contains("`deploy`") && told.contains("cargo xtask dist"));
    }

    #[test]
    fn a_folder_to_serve_must_be_named() {
        assert!(typed(&["serve-dist", "--port", "0"]).is_err());
    }
}
