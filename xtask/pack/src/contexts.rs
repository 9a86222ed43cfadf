//! Which contexts each kind of byte is guessed from: found by trying, one by one, what packs the app's own wasm best.

use crate::facts::{Datum, Fact};
use crate::kind::Kind;
use cartside_guess::CONTEXTS;

/// The contexts of each kind, each of three facts.
pub(crate) const OF_KINDS: [[[u8; 3]; CONTEXTS]; Kind::COUNT] = {
    use Fact::*;
    [
        // Op
        of_code([
            [No, No, No],
            [Full2, Type, Last2],
            [Depth, Ops6, Block],
            [DeepUnder, Types, No],
            [Block, Ops1, Depth],
            [Ops4, Deep, Ops2],
            [Deep, Ops1, No],
            [Deep, DeepUnder, Depth],
            [Depth, Types, Last1],
            [Ops3, Reckoned, Types],
        ]),
        // Declared
        of_code([
            [No, No, No],
            [Last1, Last2, Full4],
            [Function, Local3, After8],
            [After3, Last1, Load],
            [Long, Ops8, OffsetUnder],
            [Function, Get, Long],
            [Last2, Type, Twin],
            [Last1, Last2, Ops4],
            [Ops8, Last2, Get],
            [Local1, Last1, Get],
        ]),
        // Block
        of_code([
            [No, No, No],
            [Ops2, Ops4, Type],
            [Ops2, Twin, Steps],
            [Last1, Full1, Twin],
            [Block, Ops1, Depth],
            [Ops8, Steps, Depth],
            [Deep, Depth, No],
            [Function, Full2, Steps],
            [Full4, Function, Twin],
            [Set, Depth, After8],
        ]),
        // Branch
        of_code([
            [No, No, No],
            [Last1, Block, Steps],
            [Puts, Open, Block],
            [Ops4, Depth, Open],
            [Block, Ops2, Steps],
            [Block, Since, Depth],
            [Block, Last1, Ops6],
            [Last1, Last2, DeepLowest],
            [Open, No, No],
            [Function, Open, FullUnder],
        ]),
        // BranchTable
        of_code([
            [No, No, No],
            [Last1, Last2, Before1],
            [Last2, Open, Before1],
            [Open, No, DeepLowest],
            [Function, Get, Call],
            [Function, OffsetUnder, Twin],
            [After3, Twin, Last1],
            [Last1, Last2, Reckoned],
            [Puts, Last1, Last2],
            [Last1, Ops8, After8],
        ]),
        // Get
        of_code([
            [No, No, No],
            [Call, Depth, Type],
            [Type, Deep, Block],
            [Last2, Ops3, Ops6],
            [Function, Open, No],
            [Function, Offset, No],
            [Last1, Ops2, Type],
            [Set, Steps, Ops1],
            [Local2, Ops3, Local1],
            [Set, No, Reckoned],
        ]),
        // Set
        of_code([
            [No, No, No],
            [Function, Ops1, After8],
            [Before2, Get, Before1],
            [No, Reckoned, No],
            [Steps, Types, Function],
            [Unread, Type, No],
            [Ops6, Set, Reckoned],
            [Function, Open, Block],
            [Local1, Ops2, Deep],
            [Local1, Ops2, Reckoned],
        ]),
        // Global
        of_code([
            [No, No, No],
            [Ops2, No, No],
            [Ops6, No, No],
            [Twin, Reckoned, Trust],
            [Block, Ops1, Depth],
            [Function, No, No],
            [Deep, Ops1, No],
            [Last1, Last2, No],
            [Deep, DeepUnder, DeepLowest],
            [Full, Ops1, No],
        ]),
        // Alignment
        of_code([
            [No, No, No],
            [Call, Last1, Constant],
            [Deep, Last1, Reckoned],
            [DeepUnder, Ops6, Ops1],
            [Call, Local2, Unread],
            [Last1, Call, Steps],
            [No, Ops3, No],
            [DeepUnder, Ops1, Last2],
            [Constant, DeepUnder, DeepLowest],
            [Constant, Local2, Call],
        ]),
        // Load
        of_code([
            [No, No, No],
            [Last1, Ops3, No],
            [Function, Twin, No],
            [Deep, DeepUnder, Types],
            [Last1, Load, No],
            [Deep, No, No],
            [Reckoned, Ops1, Ops1],
            [Load, Last1, Ops6],
            [Offset, No, No],
            [Function, Full, Get],
        ]),
        // Store
        of_code([
            [No, No, No],
            [Last1, Last2, Ops4],
            [Deep, DeepUnder, No],
            [Last1, No, Reckoned],
            [Reckoned, Ops6, Types],
            [Last1, Types, Ops4],
            [DeepUnder, After8, Types],
            [Last1, No, No],
            [OffsetUnder, No, OffsetUnder],
            [Function, FullUnder, No],
        ]),
        // Int32
        of_code([
            [No, No, No],
            [Ops2, Store, No],
            [Depth, Ops3, Steps],
            [Deep, Ops1, No],
            [Last1, Constant, Ops4],
            [Function, No, No],
            [Function, Full, Type],
            [Deep, DeepUnder, Depth],
            [Offset, No, No],
            [Twin, No, No],
        ]),
        // Int64
        of_code([
            [No, No, No],
            [No, Store, No],
            [Last1, Ops6, Ops4],
            [Twin, No, Reckoned],
            [Deep, Ops1, No],
            [Reckoned, After3, No],
            [Last2, Long, No],
            [Reckoned, Ops3, Ops2],
            [After8, Reckoned, Trust],
            [Deep, Constant, No],
        ]),
        // Float
        of_code([
            [No, No, No],
            [After8, Reckoned, No],
            [Trust, Ops1, No],
            [Store, FullUnder, Before2],
            [Reckoned, After8, Twin],
            [Twin, Ops2, Load],
            [Function, Reckoned, No],
            [Deep, Reckoned, After8],
            [Twin, Trust, After8],
            [No, After8, No],
        ]),
        // Call
        of_code([
            [No, No, No],
            [Deep, Twin, No],
            [Ops8, Ops2, No],
            [Depth, Twin, Types],
            [Types, DeepUnder, Depth],
            [Function, Depth, No],
            [Last1, Ops1, No],
            [Last1, Depth, Reckoned],
            [Puts, Type, Ops1],
            [Depth, Ops2, Types],
        ]),
        // Indirect
        of_code([
            [No, No, No],
            [Puts, No, Last1],
            [Ops6, Ops2, Last1],
            [Twin, Full1, DeepLowest],
            [Block, DeepUnder, Depth],
            [Function, Last1, No],
            [Last1, Depth, No],
            [Last1, DeepLowest, Type],
            [Deep, DeepUnder, DeepLowest],
            [Full, Before2, No],
        ]),
        // Other
        of_code([
            [No, No, No],
            [Ops2, No, No],
            [Ops6, No, No],
            [Twin, Reckoned, Types],
            [FullUnder, Ops1, Depth],
            [Function, No, No],
            [Deep, Ops1, No],
            [Last1, Last2, Types],
            [Deep, DeepUnder, DeepLowest],
            [Last1, Last2, Ops1],
        ]),
        // Before
        of_data([
            [Datum::No, Datum::No, Datum::No],
            [Datum::Bytes1, Datum::BeforeWord, Datum::No],
            [Datum::Bytes2, Datum::No, Datum::No],
            [Datum::Classes, Datum::After8, Datum::No],
            [Datum::BeforeWord, Datum::Back4, Datum::No],
            [Datum::Tag, Datum::BeforeWord, Datum::After3],
            [Datum::Word2, Datum::Quarter, Datum::Word],
            [Datum::Before2, Datum::No, Datum::After8],
            [Datum::Word, Datum::Back8, Datum::No],
            [Datum::Word2, Datum::Word1, Datum::BeforeWord],
        ]),
        // After
        of_data([
            [Datum::No, Datum::No, Datum::No],
            [Datum::Tag, Datum::BeforeWord, Datum::Bytes1],
            [Datum::Tag, Datum::Bytes2, Datum::Bytes1],
            [Datum::Before2, Datum::Tag, Datum::Bytes5],
            [Datum::Classes, Datum::BeforeWord, Datum::No],
            [Datum::No, Datum::Bytes3, Datum::Bytes2],
            [Datum::Back16, Datum::Quarter, Datum::No],
            [Datum::No, Datum::Word, Datum::No],
            [Datum::Back8, Datum::Back4, Datum::Tag],
            [Datum::Word, Datum::BeforeWord, Datum::Word1],
        ]),
    ]
};

const fn of_code(contexts: [[Fact; 3]; CONTEXTS]) -> [[u8; 3]; CONTEXTS] {
    let mut places = [[0; 3]; CONTEXTS];
    let mut n = 0;
    while n < 3 * CONTEXTS {
        places[n / 3][n % 3] = contexts[n / 3][n % 3] as u8;
        n += 1;
    }
    places
}

const fn of_data(contexts: [[Datum; 3]; CONTEXTS]) -> [[u8; 3]; CONTEXTS] {
    let mut places = [[0; 3]; CONTEXTS];
    let mut n = 0;
    while n < 3 * CONTEXTS {
        places[n / 3][n % 3] = contexts[n / 3][n % 3] as u8;
        n += 1;
    }
    places
}
