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
            [Full2, No, Last1],
            [Ops8, Ops6, No],
            [DeepUnder, Types, No],
            [Block, Ops1, Depth],
            [Ops4, Deep, No],
            [Deep, Ops1, No],
            [Deep, DeepUnder, No],
            [Last1, Types, No],
            [Ops3, Types, Last1],
        ]),
        // Declared
        of_code([
            [No, No, No],
            [Last1, Last2, Full1],
            [Function, Local1, Ops2],
            [After3, Twin, Reckoned],
            [Ops4, No, No],
            [Function, After8, No],
            [Last2, Ops3, Twin],
            [Last1, Last2, No],
            [No, Last2, Full4],
            [Call, Last1, No],
        ]),
        // Block
        of_code([
            [No, No, No],
            [Ops2, No, No],
            [Ops6, No, Last1],
            [Twin, Reckoned, Trust],
            [Block, Ops1, Depth],
            [Function, No, No],
            [Deep, Depth, No],
            [Function, Open, No],
            [Call, Depth, No],
            [Last1, Depth, No],
        ]),
        // Branch
        of_code([
            [No, No, No],
            [Last1, No, No],
            [OffsetUnder, Open, Block],
            [Offset, Reckoned, Open],
            [Block, Ops1, Depth],
            [Block, Since, Depth],
            [Ops4, Last1, No],
            [Last1, Last2, No],
            [Open, No, No],
            [Ops6, Open, No],
        ]),
        // BranchTable
        of_code([
            [No, No, No],
            [Last1, Last2, Full2],
            [Last2, Steps, Ops8],
            [Open, No, No],
            [Function, Open, No],
            [No, Twin, No],
            [After3, Twin, Last1],
            [Last1, Last2, No],
            [Call, Last1, No],
            [Last1, Function, No],
        ]),
        // Get
        of_code([
            [No, No, No],
            [Call, Depth, Type],
            [Type, Get, Ops6],
            [Last2, No, Ops4],
            [Function, Open, No],
            [Function, Full, No],
            [Last1, Ops2, Type],
            [Set, No, Ops1],
            [Local2, Ops3, No],
            [Unread, Types, No],
        ]),
        // Set
        of_code([
            [No, No, No],
            [Function, Ops1, No],
            [Before2, No, No],
            [No, Reckoned, No],
            [Type, Types, Last1],
            [Function, Function, No],
            [Types, No, No],
            [Call, Open, Type],
            [Local1, Ops2, No],
            [Local3, Ops2, Last2],
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
            [Ops6, No, No],
            [No, Last2, No],
            [Types, Ops3, Twin],
            [Steps, Call, No],
            [Deep, Ops1, No],
            [DeepUnder, Ops1, No],
            [Constant, DeepUnder, Ops1],
            [Function, Local2, Call],
        ]),
        // Load
        of_code([
            [No, No, No],
            [Last1, Ops3, No],
            [Function, Twin, No],
            [Deep, DeepUnder, After8],
            [Last1, No, No],
            [Deep, No, No],
            [Reckoned, Ops1, Ops1],
            [Load, Ops6, Last1],
            [Offset, No, No],
            [Function, Full, No],
        ]),
        // Store
        of_code([
            [No, No, No],
            [Last1, DeepUnder, No],
            [Deep, DeepUnder, No],
            [Before2, No, After8],
            [Reckoned, Store, No],
            [Last1, Ops1, Ops4],
            [DeepUnder, Reckoned, Ops2],
            [Last1, No, No],
            [OffsetUnder, No, OffsetUnder],
            [Function, FullUnder, No],
        ]),
        // Int32
        of_code([
            [No, No, No],
            [Ops2, No, No],
            [Ops6, Ops3, No],
            [Deep, Ops1, No],
            [Last1, Types, Ops4],
            [Function, No, No],
            [Function, Full, No],
            [Deep, DeepUnder, No],
            [Offset, No, No],
            [Twin, No, No],
        ]),
        // Int64
        of_code([
            [No, No, No],
            [After3, Long, No],
            [No, Twin, Ops1],
            [After3, No, Reckoned],
            [Deep, Ops1, No],
            [After3, No, No],
            [Trust, No, No],
            [Ops3, No, Reckoned],
            [Twin, Reckoned, Trust],
            [Call, After8, No],
        ]),
        // Float
        of_code([
            [No, No, No],
            [After8, Twin, No],
            [No, Ops1, No],
            [Twin, Reckoned, Trust],
            [After3, After8, Twin],
            [Function, Ops2, Load],
            [No, FullUnder, No],
            [Offset, Last2, No],
            [After3, Long, No],
            [No, After8, No],
        ]),
        // Call
        of_code([
            [No, No, No],
            [Ops4, No, No],
            [Ops8, No, No],
            [Depth, No, Types],
            [Twin, Depth, Twin],
            [Function, Depth, No],
            [Last1, Ops1, No],
            [Last1, Depth, No],
            [Puts, Types, Depth],
            [Depth, Ops2, Ops1],
        ]),
        // Indirect
        of_code([
            [No, No, No],
            [Ops2, No, No],
            [Ops6, No, No],
            [Twin, Reckoned, Trust],
            [Block, Ops1, Depth],
            [Function, No, No],
            [Last1, Depth, No],
            [Last1, Last2, No],
            [Deep, DeepUnder, DeepLowest],
            [Full, Ops1, No],
        ]),
        // Other
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
            [Last1, Last2, Ops1],
        ]),
        // Before
        of_data([
            [Datum::No, Datum::No, Datum::No],
            [Datum::Bytes1, Datum::No, Datum::No],
            [Datum::Bytes2, Datum::No, Datum::No],
            [Datum::Classes, Datum::No, Datum::No],
            [Datum::After3, Datum::Back4, Datum::No],
            [Datum::No, Datum::BeforeWord, Datum::After3],
            [Datum::Word2, Datum::Quarter, Datum::No],
            [Datum::Before2, Datum::No, Datum::After8],
            [Datum::Word, Datum::Back16, Datum::No],
            [Datum::Classes, Datum::Back4, Datum::After8],
        ]),
        // After
        of_data([
            [Datum::No, Datum::No, Datum::No],
            [Datum::Bytes1, Datum::No, Datum::Bytes1],
            [Datum::Tag, Datum::Bytes2, Datum::No],
            [Datum::Bytes4, Datum::No, Datum::Bytes1],
            [Datum::Classes, Datum::No, Datum::No],
            [Datum::Before2, Datum::Tag, Datum::No],
            [Datum::Back16, Datum::Quarter, Datum::No],
            [Datum::No, Datum::Word, Datum::No],
            [Datum::Back8, Datum::Back4, Datum::No],
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
