;; The sums of the reduced step for four lanes at once, two to a register. Each lane's sum has its
;; terms in the order in which plain_sums.ts has them, and no two are fused, so that both give the
;; same bits. sums_binary.ts is made of this by `deno task kernels`.
;;
;; Lengths are bytes: 8 a value, 32 the four lanes of a value, 4 a number in a list.
(module
  (import "shared" "memory" (memory 1))

  ;; a place in a list of `bytes` each, held at the last
  (func $held (param $list i32) (param $place i32) (param $last i32) (param $bytes i32) (result i32)
    (i32.add (local.get $list) (i32.mul (local.get $bytes)
      (select (local.get $place) (local.get $last)
        (i32.lt_s (local.get $place) (local.get $last))))))

  ;; out[i] += Σ_q matrix[rows[i]][q]·vector[q] over the values from..to and those listed, `count` rows.
  ;; Four rows go together; where fewer are left the last is worked out again and stored again.
  (func (export "addRows")
    (param $matrix i32) (param $width i32) (param $rows i32) (param $count i32)
    (param $from i32) (param $to i32) (param $listed i32) (param $listedCount i32)
    (param $vector i32) (param $out i32)
    (local $row i32) (local $last i32)
    (local $m0 i32) (local $m1 i32) (local $m2 i32) (local $m3 i32)
    (local $o0 i32) (local $o1 i32) (local $o2 i32) (local $o3 i32)
    (local $at i32) (local $stop i32) (local $q i32)
    (local $u v128) (local $v v128) (local $c v128)
    (local $a0 v128) (local $a1 v128) (local $a2 v128) (local $a3 v128)
    (local $b0 v128) (local $b1 v128) (local $b2 v128) (local $b3 v128)
    (if (i32.eqz (local.get $count)) (then (return)))
    (local.set $last (i32.sub (local.get $count) (i32.const 1)))
    (loop $rowsLoop
      ;; coefficients and places of the four rows, held at the last one
      (local.set $q (local.get $row))
      (local.set $o0 (call $held (local.get $out) (local.get $q) (local.get $last) (i32.const 32)))
      (local.set $m0 (i32.add (local.get $matrix) (i32.mul (local.get $width) (i32.load
        (call $held (local.get $rows) (local.get $q) (local.get $last) (i32.const 4))))))
      (local.set $q (i32.add (local.get $row) (i32.const 1)))
      (local.set $o1 (call $held (local.get $out) (local.get $q) (local.get $last) (i32.const 32)))
      (local.set $m1 (i32.add (local.get $matrix) (i32.mul (local.get $width) (i32.load
        (call $held (local.get $rows) (local.get $q) (local.get $last) (i32.const 4))))))
      (local.set $q (i32.add (local.get $row) (i32.const 2)))
      (local.set $o2 (call $held (local.get $out) (local.get $q) (local.get $last) (i32.const 32)))
      (local.set $m2 (i32.add (local.get $matrix) (i32.mul (local.get $width) (i32.load
        (call $held (local.get $rows) (local.get $q) (local.get $last) (i32.const 4))))))
      (local.set $q (i32.add (local.get $row) (i32.const 3)))
      (local.set $o3 (call $held (local.get $out) (local.get $q) (local.get $last) (i32.const 32)))
      (local.set $m3 (i32.add (local.get $matrix) (i32.mul (local.get $width) (i32.load
        (call $held (local.get $rows) (local.get $q) (local.get $last) (i32.const 4))))))
      (local.set $a0 (v128.load (local.get $o0)))
      (local.set $b0 (v128.load offset=16 (local.get $o0)))
      (local.set $a1 (v128.load (local.get $o1)))
      (local.set $b1 (v128.load offset=16 (local.get $o1)))
      (local.set $a2 (v128.load (local.get $o2)))
      (local.set $b2 (v128.load offset=16 (local.get $o2)))
      (local.set $a3 (v128.load (local.get $o3)))
      (local.set $b3 (v128.load offset=16 (local.get $o3)))
      ;; the run of values
      (local.set $at (i32.shl (local.get $from) (i32.const 3)))
      (local.set $stop (i32.shl (local.get $to) (i32.const 3)))
      (if (i32.lt_s (local.get $at) (local.get $stop)) (then
        (loop $runLoop
          (local.set $q (i32.add (local.get $vector) (i32.shl (local.get $at) (i32.const 2))))
          (local.set $u (v128.load (local.get $q)))
          (local.set $v (v128.load offset=16 (local.get $q)))
          (local.set $c (v128.load64_splat (i32.add (local.get $m0) (local.get $at))))
          (local.set $a0 (f64x2.add (local.get $a0) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b0 (f64x2.add (local.get $b0) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $c (v128.load64_splat (i32.add (local.get $m1) (local.get $at))))
          (local.set $a1 (f64x2.add (local.get $a1) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b1 (f64x2.add (local.get $b1) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $c (v128.load64_splat (i32.add (local.get $m2) (local.get $at))))
          (local.set $a2 (f64x2.add (local.get $a2) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b2 (f64x2.add (local.get $b2) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $c (v128.load64_splat (i32.add (local.get $m3) (local.get $at))))
          (local.set $a3 (f64x2.add (local.get $a3) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b3 (f64x2.add (local.get $b3) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $at (i32.add (local.get $at) (i32.const 8)))
          (br_if $runLoop (i32.lt_s (local.get $at) (local.get $stop))))))
      ;; the listed values
      (local.set $stop (i32.add (local.get $listed) (i32.shl (local.get $listedCount) (i32.const 2))))
      (local.set $at (local.get $listed))
      (if (i32.lt_s (local.get $at) (local.get $stop)) (then
        (loop $listLoop
          (local.set $q (i32.shl (i32.load (local.get $at)) (i32.const 3)))
          (local.set $u (v128.load
            (i32.add (local.get $vector) (i32.shl (local.get $q) (i32.const 2)))))
          (local.set $v (v128.load offset=16
            (i32.add (local.get $vector) (i32.shl (local.get $q) (i32.const 2)))))
          (local.set $c (v128.load64_splat (i32.add (local.get $m0) (local.get $q))))
          (local.set $a0 (f64x2.add (local.get $a0) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b0 (f64x2.add (local.get $b0) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $c (v128.load64_splat (i32.add (local.get $m1) (local.get $q))))
          (local.set $a1 (f64x2.add (local.get $a1) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b1 (f64x2.add (local.get $b1) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $c (v128.load64_splat (i32.add (local.get $m2) (local.get $q))))
          (local.set $a2 (f64x2.add (local.get $a2) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b2 (f64x2.add (local.get $b2) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $c (v128.load64_splat (i32.add (local.get $m3) (local.get $q))))
          (local.set $a3 (f64x2.add (local.get $a3) (f64x2.mul (local.get $c) (local.get $u))))
          (local.set $b3 (f64x2.add (local.get $b3) (f64x2.mul (local.get $c) (local.get $v))))
          (local.set $at (i32.add (local.get $at) (i32.const 4)))
          (br_if $listLoop (i32.lt_s (local.get $at) (local.get $stop))))))
      (v128.store (local.get $o0) (local.get $a0))
      (v128.store offset=16 (local.get $o0) (local.get $b0))
      (v128.store (local.get $o1) (local.get $a1))
      (v128.store offset=16 (local.get $o1) (local.get $b1))
      (v128.store (local.get $o2) (local.get $a2))
      (v128.store offset=16 (local.get $o2) (local.get $b2))
      (v128.store (local.get $o3) (local.get $a3))
      (v128.store offset=16 (local.get $o3) (local.get $b3))
      (local.set $row (i32.add (local.get $row) (i32.const 4)))
      (br_if $rowsLoop (i32.lt_s (local.get $row) (local.get $count)))))

  ;; x[k] ← decay[k]·x[k] + growth[k]·added[k]
  (func (export "advance")
    (param $x i32) (param $added i32) (param $decay i32) (param $growth i32) (param $states i32)
    (local $stop i32) (local $e v128) (local $f v128)
    (local.set $stop (i32.add (local.get $decay) (i32.shl (local.get $states) (i32.const 3))))
    (if (i32.ge_s (local.get $decay) (local.get $stop)) (then (return)))
    (loop $statesLoop
      (local.set $e (v128.load64_splat (local.get $decay)))
      (local.set $f (v128.load64_splat (local.get $growth)))
      (v128.store (local.get $x) (f64x2.add
        (f64x2.mul (local.get $e) (v128.load (local.get $x)))
        (f64x2.mul (local.get $f) (v128.load (local.get $added)))))
      (v128.store offset=16 (local.get $x) (f64x2.add
        (f64x2.mul (local.get $e) (v128.load offset=16 (local.get $x)))
        (f64x2.mul (local.get $f) (v128.load offset=16 (local.get $added)))))
      (local.set $x (i32.add (local.get $x) (i32.const 32)))
      (local.set $added (i32.add (local.get $added) (i32.const 32)))
      (local.set $decay (i32.add (local.get $decay) (i32.const 8)))
      (local.set $growth (i32.add (local.get $growth) (i32.const 8)))
      (br_if $statesLoop (i32.lt_s (local.get $decay) (local.get $stop)))))
)
