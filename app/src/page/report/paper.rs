//! A report's blocks as they stand on paper.

use cartside_core::daybook::{Digests, VehicleView};
use cartside_core::wheel::{Position, Size};
use cartside_core::words::report::{Block, Document, LEGEND, drawn_at, figures};

use crate::album::{Album, Shown};
use crate::component::mark::standing_mark;
use crate::component::wheel_drawing::{Drawn, wheel_drawing};
use crate::looking::Looking;
use crate::markup::{Piece, nothing, sheet};
use crate::workshop::Workshop;

/// The whole report.
pub(super) fn paper(
    shop: Workshop,
    vehicle: &VehicleView<'_, '_>,
    erased: &Digests,
    document: Document,
    album: Album,
) -> Piece {
    let Document(blocks) = document;
    let pieces = blocks.into_iter().map(|block| match block {
        Block::Title(words) => sheet!("<h1>{}</h1>", words),
        Block::Heading(words) => sheet!("<h2>{}</h2>", words),
        Block::Under(words) => sheet!("<h3>{}</h3>", words),
        Block::Text(words) => sheet!("<p>{}</p>", words),
        Block::Strong(words) => sheet!("<p class=strong>{}</p>", words),
        Block::Points(points) => sheet!(
            "<ul class=points>{}</ul>",
            each(points, |it| sheet!("<li>{}</li>", it))
        ),
        Block::Facts(facts) => sheet!(
            "<dl class=facts>{}</dl>",
            each(facts, |(name, said)| sheet!(
                "<div><dt>{}</dt><dd>{}</dd></div>",
                name,
                said
            ))
        ),
        Block::Table(head, rows) => table(&head, rows),
        Block::Standing(what, standing) => sheet!(
            "<p class=\"row standing\" data-standing={}><span>{}</span>{}</p>",
            standing.code(),
            what,
            standing_mark(standing)
        ),
        Block::Drawing(position) => drawing(shop, vehicle, position),
        Block::Picture(digest, words, marks) => album.figure(Shown {
            digest,
            words,
            marks,
            erased: erased.contains(&digest),
        }),
    });
    sheet!(
        "<article class=paper>{}</article>",
        pieces.collect::<Vec<Piece>>()
    )
}

fn each<T>(all: Vec<T>, piece: fn(T) -> Piece) -> Vec<Piece> {
    all.into_iter().map(piece).collect()
}

/// A table; each cell carries its head too, for a screen on which a row stands as a list.
fn table(head: &[&'static str], rows: Vec<Vec<String>>) -> Piece {
    let heads = head.iter().map(|name| sheet!("<th>{}</th>", *name));
    let rows = rows.into_iter().map(|row| {
        let cells = row.into_iter().zip(head);
        let cells = cells.map(|(cell, name)| sheet!("<td data-head={}>{}</td>", *name, cell));
        sheet!("<tr>{}</tr>", cells.collect::<Vec<Piece>>())
    });
    sheet!(
        "<table><thead><tr>{}</tr></thead><tbody>{}</tbody></table>",
        heads.collect::<Vec<Piece>>(),
        rows.collect::<Vec<Piece>>()
    )
}

/// The drawing of one wheel with its figures, to scale where its height is known.
fn drawing(shop: Workshop, vehicle: &VehicleView<'_, '_>, position: Position) -> Piece {
    let Some(looking) = Looking::of(vehicle, position, shop) else {
        return nothing();
    };
    let visit = looking.examination.as_ref().map(|latest| latest.id);
    let figures = visit.map(|visit| figures(vehicle, visit, position, shop.style()));
    let figures = figures.unwrap_or_default();
    let height = looking.wheel.sizes.get(Size::Height);
    let (scale, words) = drawn_at(height);
    let drawn = Drawn {
        height: height.zip(scale),
        figures: &figures,
        top: 0.0,
    };
    sheet!(
        "<figure class=drawn>{}<figcaption>{} {}</figcaption></figure>",
        wheel_drawing(vehicle.id(), position, &looking, &drawn),
        words,
        LEGEND
    )
}
