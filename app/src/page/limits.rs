//! The limits that findings are judged by, row by row, with what the shop has set.

use cartside_core::diagnosis::{Limit, house_limits};
use cartside_core::survey::Group;
use cartside_core::words::{self, Style};

use crate::component::mark::grade_mark;
use crate::markup::{Piece, live, sheet};
use crate::route::Route;
use crate::workshop::{Workshop, workshop};

/// The limits in force.
pub fn page() -> Piece {
    let shop = workshop();
    sheet!(
        "<main class=page data-page=limits><h1>Limits</h1>\
         <p>When a reading reaches one of these, it is a finding. {}</p>\
         <p class=dim>{}</p>{}</main>",
        words::limit::ORIGIN,
        words::limit::SETTING,
        live(move || groups(shop))
    )
}

fn groups(shop: Workshop) -> Vec<Piece> {
    let (now, style) = (shop.limits(), shop.style());
    let rows = house_limits();
    let group = |group: Group| {
        let own = rows.iter().filter(|row| row.question.group() == group);
        sheet!(
            "<details class=fold data-group={}><summary><span class=\"strong capital\">{}</span></summary>\
             <ul class=list>{}</ul></details>",
            group.code(),
            words::question::group(group, style),
            own.map(|row| item(row, &now, style))
                .collect::<Vec<Piece>>()
        )
    };
    Group::ALL.into_iter().map(group).collect()
}

fn item(row: &Limit, now: &[Limit], style: Style) -> Piece {
    let code = row.code();
    let in_force = now.iter().find(|limit| limit.code() == code);
    sheet!(
        "<li><a class=item data-limit={} href={}><span class=whole-row><span class=\"strong capital\">{}</span>\
         <span>{}</span></span>{}</a></li>",
        code.clone(),
        Route::Limit(code).href(),
        words::question::short(row.question, style),
        words::limit::in_force(row, in_force, style),
        grade_mark(row.grade)
    )
}
