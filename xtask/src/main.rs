//! Which command does what: `serve`, `test`, `dist`, `ready`, `measure`, `pictures`, `soak`, `fuzz`.
#![allow(
    clippy::print_stdout,
    reason = "these commands talk to a person at a terminal"
)]

mod alike;
mod arguments;
mod tools;
mod fuzz;
mod machine;
mod once;
mod plain;
mod plan;
mod soak;
mod step;
mod setup;
mod shorten;
mod toolchain;
mod workspace;
mod shared_build;
mod build;
mod same;
mod seal;
mod newer;
mod precache;
mod prune;
mod server;
mod serve;
mod libtest;
mod locals;
mod tally;
mod test;
mod ready;
mod measure;
mod unpacker;
mod pack;
mod pictures;

use arguments::Command;
use std::process::ExitCode;

fn main() -> ExitCode {
    arguments::read().and_then(run).unwrap_or_else(|error| {
        eprintln!("xtask: {error:#}");
        ExitCode::FAILURE
    })
}

fn run(command: Command) -> anyhow::Result<ExitCode> {
    match command {
        Command::Test => return Ok(test::run()),
        Command::Ready => return ready::run(),
        Command::Serve(options) => serve::run(&options)?,
        Command::ServeDist(options) => serve::run_dist(&options)?,
        Command::Dist => build::run()?,
        Command::DistNewer => newer::run()?,
        Command::Measure => measure::run()?,
        Command::Pictures => pictures::run()?,
        Command::Soak => soak::run()?,
        Command::Fuzz(options) => fuzz::run(&options)?,
        Command::Help => println!("{}", arguments::HELP),
    }
    Ok(ExitCode::SUCCESS)
}
