//! What a screen reader reads, in its order: the page's accessibility tree as the browser makes it. Chromium only.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use super::browser::Browser;

/// Roles that are steered to or acted on; all else is text between them.
const TOLD: [&str; 22] = [
    "banner",
    "main",
    "contentinfo",
    "navigation",
    "region",
    "form",
    "heading",
    "link",
    "button",
    "textbox",
    "searchbox",
    "combobox",
    "checkbox",
    "radio",
    "switch",
    "DisclosureTriangle",
    "status",
    "alert",
    "progressbar",
    "image",
    "group",
    "table",
];

/// Roles that someone acts on.
const CONTROLS: [&str; 10] = [
    "link",
    "button",
    "textbox",
    "searchbox",
    "combobox",
    "checkbox",
    "radio",
    "switch",
    "DisclosureTriangle",
    "slider",
];

/// One thing that is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Read {
    /// What it is.
    pub role: String,
    /// What it is called.
    pub name: String,
    /// The level of a heading, else nought.
    pub level: u64,
    /// Whether its changes are read out by themselves.
    pub live: bool,
}

impl Read {
    /// Whether someone acts on it.
    pub fn is_control(&self) -> bool {
        CONTROLS.contains(&self.role.as_str())
    }

    fn of(node: &Value) -> Read {
        let property = |name: &str| {
            let all = node["properties"].as_array().into_iter().flatten();
            let mut named = all.filter(|property| property["name"] == name);
            named
                .next()
                .map(|property| property["value"]["value"].clone())
        };
        let text = |key: &str| node[key]["value"].as_str().unwrap_or_default();
        let live = property("live");
        Read {
            role: text("role").to_owned(),
            name: text("name")
                .split_whitespace()
                .collect::<Vec<_>>()
                .join(" "),
            level: property("level")
                .and_then(|level| level.as_u64())
                .unwrap_or_default(),
            live: live.is_some_and(|live| live == "polite" || live == "assertive"),
        }
    }

    /// A line of it: `heading 2 “Part by part”`.
    fn line(&self) -> String {
        let level = match self.level {
            0 => String::new(),
            level => format!(" {level}"),
        };
        format!("{}{level} “{}”", self.role, self.name)
    }
}

impl Browser<'_> {
    /// What is read of the page, in its order; texts between what is steered to are left out.
    pub async fn read_aloud(&self) -> Vec<Read> {
        let tree = self.below("Accessibility.getFullAXTree", json!({})).await;
        let nodes = tree["nodes"].as_array().cloned().unwrap_or_default();
        let by_id: BTreeMap<&str, &Value> = nodes
            .iter()
            .filter_map(|node| Some((node["nodeId"].as_str()?, node)))
            .collect();
        let mut read = Vec::new();
        if let Some(root) = nodes.first() {
            gather(root, &by_id, &mut read);
        }
        read
    }
}

fn gather(node: &Value, by_id: &BTreeMap<&str, &Value>, read: &mut Vec<Read>) {
    let told = Read::of(node);
    // A group without a name says nothing by itself.
    let says = told.role != "group" || !told.name.is_empty();
    if says && node["ignored"] != json!(true) && TOLD.contains(&told.role.as_str()) {
        read.push(told);
    }
    let children = node["childIds"].as_array().into_iter().flatten();
    for child in children.filter_map(|id| by_id.get(id.as_str()?)) {
        gather(child, by_id, read);
    }
}

/// The reading as lines. Of more than three alike in a row the first and the last stand for all.
pub fn lines(read: &[Read]) -> String {
    let mut lines = Vec::new();
    for alike in read.chunk_by(|one, next| one.role == next.role && one.level == next.level) {
        match alike {
            [first, .., last] if alike.len() > 3 => {
                lines.push(first.line());
                lines.push(format!("  … {} in all …", alike.len()));
                lines.push(last.line());
            }
            few => lines.extend(few.iter().map(Read::line)),
        }
    }
    lines.join("\n")
}
