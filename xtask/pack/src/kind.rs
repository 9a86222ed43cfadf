//! The kinds of bytes; each has trees of its own.

/// What a byte says.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// An instruction.
    Op,
    /// How many functions there are, and the locals that each declares.
    Declared,
    Block,
    Branch,
    BranchTable,
    Get,
    Set,
    Global,
    /// How the alignment of an access differs from the natural one.
    Alignment,
    Load,
    Store,
    Int32,
    Int64,
    Float,
    Call,
    Indirect,
    Other,
    /// What stands before the code.
    Before,
    /// What stands after it.
    After,
}

impl Kind {
    /// How many there are.
    pub(crate) const COUNT: usize = Self::After as usize + 1;

    pub(crate) fn is_code(self) -> bool {
        (self as usize) < Self::Before as usize
    }
}
