"""The proofs that every case must pass."""

from __future__ import annotations

from pencilwood.proof.case_proof import CaseProof, prove_case

__all__ = ["CaseProof", "prove_case"]
