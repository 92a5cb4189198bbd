;; The alternating-direction step of kernel.ts for four slices at once, two to a register. Each slice's
;; sums have their terms in the order of kernel.ts and none are fused, so that both give the same bits.
;; adi_binary.ts is made of this by `deno task kernels`.
;;
;; Lengths are bytes: 32 a cell of four slices, or of its four coefficients.
(module
  (import "shared" "memory" (memory 1))

  ;; First half step along a row: right-hand side from the rows above and below, elimination.
  (func $eliminateRow
    (param $across i32) (param $field i32) (param $work i32) (param $kept i32)
    (param $up i32) (param $down i32) (param $stride i32)
    (local $stop i32) (local $own v128) (local $above v128) (local $below v128) (local $left v128)
    (local $r v128) (local $p v128) (local $q v128)
    (local.set $stop (i32.add (local.get $field) (local.get $stride)))
    (loop $cells
      (local.set $own (v128.load64_splat (local.get $across)))
      (local.set $above (v128.load64_splat offset=8 (local.get $across)))
      (local.set $below (v128.load64_splat offset=16 (local.get $across)))
      (local.set $left (v128.load64_splat offset=24 (local.get $across)))
      (local.set $r (f64x2.add
        (f64x2.add
          (f64x2.mul (local.get $own) (v128.load (local.get $field)))
          (f64x2.mul (local.get $above) (v128.load (i32.add (local.get $field) (local.get $up)))))
        (f64x2.mul (local.get $below) (v128.load (i32.add (local.get $field) (local.get $down))))))
      (local.set $p (f64x2.add (local.get $r) (f64x2.mul (local.get $left) (local.get $p))))
      (v128.store (local.get $work) (local.get $p))
      ;; where the right-hand side is kept may be where it was read: both halves are read first
      (local.set $own (f64x2.add
        (f64x2.add
          (f64x2.mul (local.get $own) (v128.load offset=16 (local.get $field)))
          (f64x2.mul (local.get $above)
            (v128.load offset=16 (i32.add (local.get $field) (local.get $up)))))
        (f64x2.mul (local.get $below)
          (v128.load offset=16 (i32.add (local.get $field) (local.get $down))))))
      (v128.store (local.get $kept) (local.get $r))
      (v128.store offset=16 (local.get $kept) (local.get $own))
      (local.set $q (f64x2.add (local.get $own) (f64x2.mul (local.get $left) (local.get $q))))
      (v128.store offset=16 (local.get $work) (local.get $q))
      (local.set $across (i32.add (local.get $across) (i32.const 32)))
      (local.set $work (i32.add (local.get $work) (i32.const 32)))
      (local.set $kept (i32.add (local.get $kept) (i32.const 32)))
      (local.set $field (i32.add (local.get $field) (i32.const 32)))
      (br_if $cells (i32.lt_u (local.get $field) (local.get $stop)))))

  ;; Solves a row from the right and carries it down into the elimination of its columns.
  (func $solveRow
    (param $along i32) (param $work i32) (param $kept i32) (param $up i32) (param $stride i32)
    (local $first i32) (local $t v128) (local $s v128)
    (local $middle v128) (local $before v128) (local $above v128) (local $next v128)
    (local.set $first (local.get $work))
    (local.set $stride (i32.sub (local.get $stride) (i32.const 32)))
    (local.set $along (i32.add (local.get $along) (local.get $stride)))
    (local.set $work (i32.add (local.get $work) (local.get $stride)))
    (local.set $kept (i32.add (local.get $kept) (local.get $stride)))
    (loop $cells
      (local.set $middle (v128.load64_splat (local.get $along)))
      (local.set $before (v128.load64_splat offset=8 (local.get $along)))
      (local.set $above (v128.load64_splat offset=16 (local.get $along)))
      (local.set $next (v128.load64_splat offset=24 (local.get $along)))
      (local.set $t (f64x2.add
        (v128.load (local.get $work)) (f64x2.mul (local.get $next) (local.get $t))))
      (local.set $s (f64x2.add
        (v128.load offset=16 (local.get $work)) (f64x2.mul (local.get $next) (local.get $s))))
      (v128.store (local.get $work) (f64x2.add
        (f64x2.sub
          (f64x2.mul (local.get $middle) (local.get $t))
          (f64x2.mul (local.get $before) (v128.load (local.get $kept))))
        (f64x2.mul (local.get $above) (v128.load (i32.add (local.get $work) (local.get $up))))))
      (v128.store offset=16 (local.get $work) (f64x2.add
        (f64x2.sub
          (f64x2.mul (local.get $middle) (local.get $s))
          (f64x2.mul (local.get $before) (v128.load offset=16 (local.get $kept))))
        (f64x2.mul (local.get $above)
          (v128.load offset=16 (i32.add (local.get $work) (local.get $up))))))
      (local.set $along (i32.sub (local.get $along) (i32.const 32)))
      (local.set $kept (i32.sub (local.get $kept) (i32.const 32)))
      (local.set $work (i32.sub (local.get $work) (i32.const 32)))
      (br_if $cells (i32.ge_s (local.get $work) (local.get $first)))))

  ;; Solves all columns from below; leaves the new temperatures in the field.
  (func $climb
    (param $columnNext i32) (param $field i32) (param $work i32)
    (param $columns i32) (param $rows i32) (param $stride i32)
    (local $at i32) (local $next v128)
    (local.set $at (i32.mul (local.get $stride) (i32.sub (local.get $rows) (i32.const 1))))
    (memory.copy
      (i32.add (local.get $field) (local.get $at))
      (i32.add (local.get $work) (local.get $at))
      (local.get $stride))
    (if (i32.eqz (local.get $at)) (then (return)))
    (local.set $columnNext (i32.add (local.get $columnNext) (i32.shr_u (local.get $at) (i32.const 2))))
    (local.set $work (i32.add (local.get $work) (local.get $at)))
    (local.set $at (i32.add (local.get $field) (local.get $at)))
    (loop $cells
      (local.set $at (i32.sub (local.get $at) (i32.const 32)))
      (local.set $work (i32.sub (local.get $work) (i32.const 32)))
      (local.set $columnNext (i32.sub (local.get $columnNext) (i32.const 8)))
      (local.set $next (v128.load64_splat (local.get $columnNext)))
      (v128.store (local.get $at) (f64x2.add
        (v128.load (local.get $work))
        (f64x2.mul (local.get $next) (v128.load (i32.add (local.get $at) (local.get $stride))))))
      (v128.store offset=16 (local.get $at) (f64x2.add
        (v128.load offset=16 (local.get $work))
        (f64x2.mul (local.get $next)
          (v128.load offset=16 (i32.add (local.get $at) (local.get $stride))))))
      (br_if $cells (i32.gt_u (local.get $at) (local.get $field)))))

  ;; One step of four slices without sources, in place.
  (func (export "step")
    (param $across i32) (param $along i32) (param $columnNext i32)
    (param $field i32) (param $work i32) (param $columns i32) (param $rows i32)
    (local $stride i32) (local $row i32) (local $at i32) (local $kept i32)
    (local $up i32) (local $down i32)
    (local.set $stride (i32.shl (local.get $columns) (i32.const 5)))
    (loop $each
      (local.set $up (select (i32.sub (i32.const 0) (local.get $stride)) (i32.const 0)
        (i32.gt_s (local.get $row) (i32.const 0))))
      (local.set $down (select (local.get $stride) (i32.const 0)
        (i32.lt_s (i32.add (local.get $row) (i32.const 1)) (local.get $rows))))
      ;; the right-hand side waits in a row that nobody needs any more or yet
      (local.set $kept (select
        (i32.add (i32.add (local.get $work) (local.get $at)) (local.get $stride))
        (i32.add (i32.add (local.get $field) (local.get $at)) (local.get $up))
        (local.get $down)))
      (call $eliminateRow
        (i32.add (local.get $across) (local.get $at)) (i32.add (local.get $field) (local.get $at))
        (i32.add (local.get $work) (local.get $at)) (local.get $kept)
        (local.get $up) (local.get $down) (local.get $stride))
      (call $solveRow
        (i32.add (local.get $along) (local.get $at)) (i32.add (local.get $work) (local.get $at))
        (local.get $kept) (local.get $up) (local.get $stride))
      (local.set $at (i32.add (local.get $at) (local.get $stride)))
      (local.set $row (i32.add (local.get $row) (i32.const 1)))
      (br_if $each (i32.lt_s (local.get $row) (local.get $rows))))
    (call $climb (local.get $columnNext) (local.get $field) (local.get $work)
      (local.get $columns) (local.get $rows) (local.get $stride)))
)
