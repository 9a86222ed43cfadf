//! What Lighthouse says of the first page as it is served: 100 of 100 for accessibility and best practices in every run;
//! its figure for performance is told, the middle of five.

use std::process::Command;

use cartside_tests::drive::{Server, programs};
use serde_json::Value;

use crate::figure::{alone, of_hundred};

const TIMES: usize = 5;
/// What must be perfect.
const PERFECT: [&str; 2] = ["accessibility", "best-practices"];
const PERFORMANCE: &str = "performance";

#[tokio::test]
async fn lighthouse_finds_nothing_to_mend() {
    let _turn = alone().await;
    let server = Server::start();
    let mut performance = Vec::new();
    for _ in 0..TIMES {
        let rated = rated(server.address());
        for category in PERFECT {
            let found = score(&rated, category);
            let faults = faults(&rated, category);
            assert!(found >= 100.0, "{category}: {found} of 100: {faults:#?}");
        }
        performance.push(score(&rated, PERFORMANCE));
    }
    for category in PERFECT {
        println!("figure: Lighthouse, {category}: 100 of 100 (limit 100)");
    }
    println!("Lighthouse, performance, each of {TIMES}: {performance:.0?}");
    let middle = of_hundred(50, performance);
    println!("figure: Lighthouse, performance, middle of {TIMES}: {middle:.0} of 100");
}

/// Runs Lighthouse once, as it comes: a slow telephone on a slow line, simulated.
fn rated(address: &str) -> Value {
    let program = programs::lighthouse();
    let categories = format!("--only-categories={PERFORMANCE},{}", PERFECT.join(","));
    let ran = Command::new(&program)
        .args([address, "--quiet", "--output=json", &categories])
        .arg("--chrome-flags=--headless=new --no-sandbox --disable-gpu")
        .env("CHROME_PATH", programs::browser())
        .output();
    let ran = ran.unwrap_or_else(|error| {
        panic!(
            "{} does not start: {error}; is Node there?",
            program.display()
        )
    });
    let said = String::from_utf8_lossy(&ran.stderr);
    assert!(ran.status.success(), "Lighthouse failed: {said}");
    serde_json::from_slice(&ran.stdout).expect("Lighthouse writes JSON")
}

/// Of 100.
fn score(rated: &Value, category: &str) -> f64 {
    let score = &rated["categories"][category]["score"];
    score.as_f64().unwrap_or_default() * 100.0
}

/// The audits of a category that take something off, by name.
fn faults(rated: &Value, category: &str) -> Vec<String> {
    let audits = rated["categories"][category]["auditRefs"].as_array();
    let names = audits
        .into_iter()
        .flatten()
        .filter_map(|one| one["id"].as_str());
    names
        .map(|name| &rated["audits"][name])
        .filter(|audit| audit["score"].as_f64().is_some_and(|score| score < 1.0))
        .map(|audit| format!("{}: {}", audit["id"], audit["title"]))
        .collect()
}
