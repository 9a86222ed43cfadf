//! Which contexts each kind of byte is guessed from: found by trying, one by one, what packs the app's own wasm best.

use crate::facts::{Datum, Fact};
use crate::guess::CONTEXTS;
use crate::kind::Kind;

/// The contexts of each kind, each of three facts.
pub(crate) const OF_KINDS: [[[u8; 3]; CONTEXTS]; Kind::COUNT] = {
    use Fact::*;
    [
        // Op
        of_code([
            [No, No, No],
            [Full2, No, No],
            [Ops8, No, No],
            [DeepUnder, Ops1, No],
            [Block, Ops1, Depth],
            [Ops6, No, No],
            [Deep, Ops1, No],
            [Deep, DeepUnder, No],
            [Last1, Depth, No],
            [Ops3, Types, No],
        ]),
        // Declared
        of_code([
            [No, No, No],
            [Last1, Depth, No],
            [Function, Local1, Ops2],
            [After3, Twin, Reckoned],
            [Ops4, No, No],
            [Function, No, No],
            [Full1, No, No],
            [Last1, Last2, No],
            [Last1, Last2, Ops1],
            [Call, Last1, No],
        ]),
        // Block
        of_code([
            [No, No, No],
            [Ops2, No, No],
            [Ops6, No, No],
            [Twin, Reckoned, Trust],
            [Block, Ops1, Depth],
            [Function, No, No],
            [Deep, Ops1, No],
            [Function, Open, No],
            [Call, Depth, No],
            [Last1, Depth, No],
        ]),
        // Branch
        of_code([
            [No, No, No],
            [Last1, Depth, No],
            [Ops6, No, No],
            [Twin, Reckoned, Trust],
            [Block, Ops1, Depth],
            [Block, Since, Depth],
            [Call, Last1, No],
            [Last1, Last2, No],
            [Open, Block, No],
            [Function, Open, No],
        ]),
        // BranchTable
        of_code([
            [No, No, No],
            [Last1, Last2, Ops1],
            [Ops6, No, No],
            [Open, Block, No],
            [Function, Open, No],
            [Function, Twin, No],
            [After3, Twin, Reckoned],
            [Last1, Last2, No],
            [Call, Last1, No],
            [Last1, No, No],
        ]),
        // Get
        of_code([
            [No, No, No],
            [Call, Depth, No],
            [Ops6, No, No],
            [Function, No, No],
            [Function, Open, No],
            [Function, Full, No],
            [Local1, Ops2, No],
            [Types, Unread, Ops1],
            [Local2, No, No],
            [Unread, Types, No],
        ]),
        // Set
        of_code([
            [No, No, No],
            [Function, Ops1, No],
            [Before2, No, No],
            [Twin, Reckoned, Trust],
            [Types, Unread, Ops1],
            [Function, No, No],
            [Local3, No, No],
            [Unread, Types, No],
            [Local1, Ops2, No],
            [Last1, Depth, No],
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
            [Call, Last1, No],
            [Ops6, No, No],
            [Last1, Last2, No],
            [Constant, Ops1, No],
            [Function, Open, No],
            [Deep, Ops1, No],
            [DeepUnder, Ops1, No],
            [Deep, DeepUnder, DeepLowest],
            [Function, Local2, No],
        ]),
        // Load
        of_code([
            [No, No, No],
            [Last1, Depth, No],
            [Function, Twin, No],
            [Deep, DeepUnder, DeepLowest],
            [Last1, No, No],
            [Deep, Load, No],
            [Reckoned, Ops1, No],
            [Last1, Last2, No],
            [Offset, No, No],
            [Function, Full, No],
        ]),
        // Store
        of_code([
            [No, No, No],
            [Last1, Last2, No],
            [Deep, DeepUnder, No],
            [Before2, No, No],
            [Reckoned, Ops1, No],
            [Last1, Ops1, No],
            [DeepUnder, Puts, No],
            [Last1, Depth, No],
            [OffsetUnder, No, No],
            [Function, FullUnder, No],
        ]),
        // Int32
        of_code([
            [No, No, No],
            [Ops2, No, No],
            [Ops6, No, No],
            [Deep, Ops1, No],
            [Last1, Ops1, No],
            [Function, No, No],
            [Function, Full, No],
            [Deep, DeepUnder, DeepLowest],
            [Offset, No, No],
            [Twin, Reckoned, Trust],
        ]),
        // Int64
        of_code([
            [No, No, No],
            [After3, Long, No],
            [After8, Twin, Trust],
            [After3, Twin, Reckoned],
            [Deep, Ops1, No],
            [Last1, Ops1, No],
            [After3, After8, Twin],
            [Ops3, Types, No],
            [Twin, Reckoned, Trust],
            [Call, Depth, No],
        ]),
        // Float
        of_code([
            [No, No, No],
            [After8, Twin, Trust],
            [DeepUnder, Ops1, No],
            [Twin, Reckoned, Trust],
            [After3, After8, Twin],
            [Function, No, No],
            [Full1, Deep, No],
            [Last1, Last2, No],
            [After3, Long, No],
            [Last1, Last2, Ops1],
        ]),
        // Call
        of_code([
            [No, No, No],
            [Ops1, Twin, No],
            [Ops8, No, No],
            [OffsetUnder, No, No],
            [Block, Ops1, Depth],
            [Function, No, No],
            [Last1, Ops1, No],
            [Last1, Depth, No],
            [Deep, DeepUnder, No],
            [Depth, Ops2, No],
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
            [Datum::After3, Datum::Long, Datum::No],
            [Datum::Word, Datum::BeforeWord, Datum::Word1],
            [Datum::Bytes3, Datum::Quarter, Datum::No],
            [Datum::Before2, Datum::No, Datum::No],
            [Datum::Word, Datum::Bytes2, Datum::No],
            [Datum::Quarter, Datum::Back4, Datum::After8],
        ]),
        // After
        of_data([
            [Datum::No, Datum::No, Datum::No],
            [Datum::Bytes1, Datum::No, Datum::No],
            [Datum::Tag, Datum::Bytes2, Datum::No],
            [Datum::Bytes3, Datum::No, Datum::No],
            [Datum::Classes, Datum::No, Datum::No],
            [Datum::Word, Datum::Tag, Datum::No],
            [Datum::Back16, Datum::Bytes1, Datum::No],
            [Datum::Word, Datum::Bytes2, Datum::No],
            [Datum::Back8, Datum::Back4, Datum::Back12],
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
