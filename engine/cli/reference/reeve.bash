_reeve() {
    local i cur prev opts cmd
    COMPREPLY=()
    if [[ "${BASH_VERSINFO[0]}" -ge 4 ]]; then
        cur="$2"
    else
        cur="${COMP_WORDS[COMP_CWORD]}"
    fi
    prev="$3"
    cmd=""
    opts=""

    for i in "${COMP_WORDS[@]:0:COMP_CWORD}"
    do
        case "${cmd},${i}" in
            ",$1")
                cmd="reeve"
                ;;
            reeve,begin)
                cmd="reeve__subcmd__begin"
                ;;
            reeve,bench)
                cmd="reeve__subcmd__bench"
                ;;
            reeve,book)
                cmd="reeve__subcmd__book"
                ;;
            reeve,check)
                cmd="reeve__subcmd__check"
                ;;
            reeve,compare)
                cmd="reeve__subcmd__compare"
                ;;
            reeve,completions)
                cmd="reeve__subcmd__completions"
                ;;
            reeve,costing)
                cmd="reeve__subcmd__costing"
                ;;
            reeve,help)
                cmd="reeve__subcmd__help"
                ;;
            reeve,knots)
                cmd="reeve__subcmd__knots"
                ;;
            reeve,man)
                cmd="reeve__subcmd__man"
                ;;
            reeve,mix)
                cmd="reeve__subcmd__mix"
                ;;
            reeve,quote)
                cmd="reeve__subcmd__quote"
                ;;
            reeve,schema)
                cmd="reeve__subcmd__schema"
                ;;
            reeve,takeoff)
                cmd="reeve__subcmd__takeoff"
                ;;
            reeve,weigh)
                cmd="reeve__subcmd__weigh"
                ;;
            reeve__subcmd__book,backup)
                cmd="reeve__subcmd__book__subcmd__backup"
                ;;
            reeve__subcmd__book,check)
                cmd="reeve__subcmd__book__subcmd__check"
                ;;
            reeve__subcmd__book,enquire)
                cmd="reeve__subcmd__book__subcmd__enquire"
                ;;
            reeve__subcmd__book,export)
                cmd="reeve__subcmd__book__subcmd__export"
                ;;
            reeve__subcmd__book,forget)
                cmd="reeve__subcmd__book__subcmd__forget"
                ;;
            reeve__subcmd__book,help)
                cmd="reeve__subcmd__book__subcmd__help"
                ;;
            reeve__subcmd__book,import)
                cmd="reeve__subcmd__book__subcmd__import"
                ;;
            reeve__subcmd__book,issue)
                cmd="reeve__subcmd__book__subcmd__issue"
                ;;
            reeve__subcmd__book,learn)
                cmd="reeve__subcmd__book__subcmd__learn"
                ;;
            reeve__subcmd__book,list)
                cmd="reeve__subcmd__book__subcmd__list"
                ;;
            reeve__subcmd__book,log)
                cmd="reeve__subcmd__book__subcmd__log"
                ;;
            reeve__subcmd__book,mark)
                cmd="reeve__subcmd__book__subcmd__mark"
                ;;
            reeve__subcmd__book,pay)
                cmd="reeve__subcmd__book__subcmd__pay"
                ;;
            reeve__subcmd__book,queue)
                cmd="reeve__subcmd__book__subcmd__queue"
                ;;
            reeve__subcmd__book,show)
                cmd="reeve__subcmd__book__subcmd__show"
                ;;
            reeve__subcmd__book,start)
                cmd="reeve__subcmd__book__subcmd__start"
                ;;
            reeve__subcmd__book,stop)
                cmd="reeve__subcmd__book__subcmd__stop"
                ;;
            reeve__subcmd__book,summary)
                cmd="reeve__subcmd__book__subcmd__summary"
                ;;
            reeve__subcmd__book,took)
                cmd="reeve__subcmd__book__subcmd__took"
                ;;
            reeve__subcmd__book,undo)
                cmd="reeve__subcmd__book__subcmd__undo"
                ;;
            reeve__subcmd__book__subcmd__help,backup)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__backup"
                ;;
            reeve__subcmd__book__subcmd__help,check)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__check"
                ;;
            reeve__subcmd__book__subcmd__help,enquire)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__enquire"
                ;;
            reeve__subcmd__book__subcmd__help,export)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__export"
                ;;
            reeve__subcmd__book__subcmd__help,forget)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__forget"
                ;;
            reeve__subcmd__book__subcmd__help,help)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__help"
                ;;
            reeve__subcmd__book__subcmd__help,import)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__import"
                ;;
            reeve__subcmd__book__subcmd__help,issue)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__issue"
                ;;
            reeve__subcmd__book__subcmd__help,learn)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__learn"
                ;;
            reeve__subcmd__book__subcmd__help,list)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__list"
                ;;
            reeve__subcmd__book__subcmd__help,log)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__log"
                ;;
            reeve__subcmd__book__subcmd__help,mark)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__mark"
                ;;
            reeve__subcmd__book__subcmd__help,pay)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__pay"
                ;;
            reeve__subcmd__book__subcmd__help,queue)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__queue"
                ;;
            reeve__subcmd__book__subcmd__help,show)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__show"
                ;;
            reeve__subcmd__book__subcmd__help,start)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__start"
                ;;
            reeve__subcmd__book__subcmd__help,stop)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__stop"
                ;;
            reeve__subcmd__book__subcmd__help,summary)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__summary"
                ;;
            reeve__subcmd__book__subcmd__help,took)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__took"
                ;;
            reeve__subcmd__book__subcmd__help,undo)
                cmd="reeve__subcmd__book__subcmd__help__subcmd__undo"
                ;;
            reeve__subcmd__help,begin)
                cmd="reeve__subcmd__help__subcmd__begin"
                ;;
            reeve__subcmd__help,bench)
                cmd="reeve__subcmd__help__subcmd__bench"
                ;;
            reeve__subcmd__help,book)
                cmd="reeve__subcmd__help__subcmd__book"
                ;;
            reeve__subcmd__help,check)
                cmd="reeve__subcmd__help__subcmd__check"
                ;;
            reeve__subcmd__help,compare)
                cmd="reeve__subcmd__help__subcmd__compare"
                ;;
            reeve__subcmd__help,completions)
                cmd="reeve__subcmd__help__subcmd__completions"
                ;;
            reeve__subcmd__help,costing)
                cmd="reeve__subcmd__help__subcmd__costing"
                ;;
            reeve__subcmd__help,help)
                cmd="reeve__subcmd__help__subcmd__help"
                ;;
            reeve__subcmd__help,knots)
                cmd="reeve__subcmd__help__subcmd__knots"
                ;;
            reeve__subcmd__help,man)
                cmd="reeve__subcmd__help__subcmd__man"
                ;;
            reeve__subcmd__help,mix)
                cmd="reeve__subcmd__help__subcmd__mix"
                ;;
            reeve__subcmd__help,quote)
                cmd="reeve__subcmd__help__subcmd__quote"
                ;;
            reeve__subcmd__help,schema)
                cmd="reeve__subcmd__help__subcmd__schema"
                ;;
            reeve__subcmd__help,takeoff)
                cmd="reeve__subcmd__help__subcmd__takeoff"
                ;;
            reeve__subcmd__help,weigh)
                cmd="reeve__subcmd__help__subcmd__weigh"
                ;;
            reeve__subcmd__help__subcmd__book,backup)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__backup"
                ;;
            reeve__subcmd__help__subcmd__book,check)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__check"
                ;;
            reeve__subcmd__help__subcmd__book,enquire)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__enquire"
                ;;
            reeve__subcmd__help__subcmd__book,export)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__export"
                ;;
            reeve__subcmd__help__subcmd__book,forget)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__forget"
                ;;
            reeve__subcmd__help__subcmd__book,import)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__import"
                ;;
            reeve__subcmd__help__subcmd__book,issue)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__issue"
                ;;
            reeve__subcmd__help__subcmd__book,learn)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__learn"
                ;;
            reeve__subcmd__help__subcmd__book,list)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__list"
                ;;
            reeve__subcmd__help__subcmd__book,log)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__log"
                ;;
            reeve__subcmd__help__subcmd__book,mark)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__mark"
                ;;
            reeve__subcmd__help__subcmd__book,pay)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__pay"
                ;;
            reeve__subcmd__help__subcmd__book,queue)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__queue"
                ;;
            reeve__subcmd__help__subcmd__book,show)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__show"
                ;;
            reeve__subcmd__help__subcmd__book,start)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__start"
                ;;
            reeve__subcmd__help__subcmd__book,stop)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__stop"
                ;;
            reeve__subcmd__help__subcmd__book,summary)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__summary"
                ;;
            reeve__subcmd__help__subcmd__book,took)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__took"
                ;;
            reeve__subcmd__help__subcmd__book,undo)
                cmd="reeve__subcmd__help__subcmd__book__subcmd__undo"
                ;;
            reeve__subcmd__help__subcmd__knots,admit)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__admit"
                ;;
            reeve__subcmd__help__subcmd__knots,begin)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__begin"
                ;;
            reeve__subcmd__help__subcmd__knots,chart)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__chart"
                ;;
            reeve__subcmd__help__subcmd__knots,check)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__check"
                ;;
            reeve__subcmd__help__subcmd__knots,dismiss)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__dismiss"
                ;;
            reeve__subcmd__help__subcmd__knots,hand)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__hand"
                ;;
            reeve__subcmd__help__subcmd__knots,list)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__list"
                ;;
            reeve__subcmd__help__subcmd__knots,probe)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__probe"
                ;;
            reeve__subcmd__help__subcmd__knots,sample)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__sample"
                ;;
            reeve__subcmd__help__subcmd__knots,show)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__show"
                ;;
            reeve__subcmd__help__subcmd__knots,tighten)
                cmd="reeve__subcmd__help__subcmd__knots__subcmd__tighten"
                ;;
            reeve__subcmd__knots,admit)
                cmd="reeve__subcmd__knots__subcmd__admit"
                ;;
            reeve__subcmd__knots,begin)
                cmd="reeve__subcmd__knots__subcmd__begin"
                ;;
            reeve__subcmd__knots,chart)
                cmd="reeve__subcmd__knots__subcmd__chart"
                ;;
            reeve__subcmd__knots,check)
                cmd="reeve__subcmd__knots__subcmd__check"
                ;;
            reeve__subcmd__knots,dismiss)
                cmd="reeve__subcmd__knots__subcmd__dismiss"
                ;;
            reeve__subcmd__knots,hand)
                cmd="reeve__subcmd__knots__subcmd__hand"
                ;;
            reeve__subcmd__knots,help)
                cmd="reeve__subcmd__knots__subcmd__help"
                ;;
            reeve__subcmd__knots,list)
                cmd="reeve__subcmd__knots__subcmd__list"
                ;;
            reeve__subcmd__knots,probe)
                cmd="reeve__subcmd__knots__subcmd__probe"
                ;;
            reeve__subcmd__knots,sample)
                cmd="reeve__subcmd__knots__subcmd__sample"
                ;;
            reeve__subcmd__knots,show)
                cmd="reeve__subcmd__knots__subcmd__show"
                ;;
            reeve__subcmd__knots,tighten)
                cmd="reeve__subcmd__knots__subcmd__tighten"
                ;;
            reeve__subcmd__knots__subcmd__help,admit)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__admit"
                ;;
            reeve__subcmd__knots__subcmd__help,begin)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__begin"
                ;;
            reeve__subcmd__knots__subcmd__help,chart)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__chart"
                ;;
            reeve__subcmd__knots__subcmd__help,check)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__check"
                ;;
            reeve__subcmd__knots__subcmd__help,dismiss)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__dismiss"
                ;;
            reeve__subcmd__knots__subcmd__help,hand)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__hand"
                ;;
            reeve__subcmd__knots__subcmd__help,help)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__help"
                ;;
            reeve__subcmd__knots__subcmd__help,list)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__list"
                ;;
            reeve__subcmd__knots__subcmd__help,probe)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__probe"
                ;;
            reeve__subcmd__knots__subcmd__help,sample)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__sample"
                ;;
            reeve__subcmd__knots__subcmd__help,show)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__show"
                ;;
            reeve__subcmd__knots__subcmd__help,tighten)
                cmd="reeve__subcmd__knots__subcmd__help__subcmd__tighten"
                ;;
            *)
                ;;
        esac
    done

    case "${cmd}" in
        reeve)
            opts="-h -V --help --version begin check takeoff costing bench quote compare weigh mix book knots schema completions man help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 1 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__begin)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__bench)
            opts="-h --size --measure --confidence --shop --demo --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --confidence)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book)
            opts="-h --help enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__backup)
            opts="-h --shop --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__check)
            opts="-h --seal --shop --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --seal)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__enquire)
            opts="-h --note --shop --on --ahead --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --note)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__export)
            opts="-h --shop --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__forget)
            opts="-h --also --yes --shop --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --also)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help)
            opts="enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__backup)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__check)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__enquire)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__export)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__forget)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__import)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__issue)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__learn)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__list)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__log)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__mark)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__pay)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__queue)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__show)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__start)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__stop)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__summary)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__took)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__help__subcmd__undo)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__import)
            opts="-h --shop --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__issue)
            opts="-h --size --measure --confidence --note --out --own --shop --on --ahead --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --confidence)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --note)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --out)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --own)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__learn)
            opts="-h --yes --shop --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__list)
            opts="-h --stands --client --year --shop --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --stands)
                    COMPREPLY=($(compgen -W "enquiry quoted lapsed accepted declined on-bench finished delivered paid cancelled" -- "${cur}"))
                    return 0
                    ;;
                --client)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --year)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html csv json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__log)
            opts="-h --minutes --step --cord --bought --note --shop --on --ahead --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --minutes)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --step)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --cord)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --bought)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --note)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__mark)
            opts="-h --note --shop --on --ahead --help enquiry quoted lapsed accepted declined on-bench finished delivered paid cancelled"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --note)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__pay)
            opts="-h --note --shop --on --ahead --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --note)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__queue)
            opts="-h --shop --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__show)
            opts="-h --page --revision --shop --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --page)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --revision)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__start)
            opts="-h --step --shop --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --step)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__stop)
            opts="-h --drop --note --shop --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --note)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__summary)
            opts="-h --year --shop --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --year)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html csv json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__took)
            opts="-h --year --shop --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --year)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__book__subcmd__undo)
            opts="-h --why --shop --on --ahead --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --why)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__check)
            opts="-h --shop --demo --on --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__compare)
            opts="-h --size --measure --price --what-if --shop --demo --sort --where --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --price)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --what-if)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --sort)
                    COMPREPLY=($(compgen -W "design size cord put-ups weight hours material labour overhead cost lowest price before-fees fees margin margin-percent per-hour contribution market market-margin market-percent market-per-hour weekly" -- "${cur}"))
                    return 0
                    ;;
                --where)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html csv json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__completions)
            opts="-h --help bash elvish fish powershell zsh"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__costing)
            opts="-h --size --measure --confidence --shop --demo --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --confidence)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help)
            opts="begin check takeoff costing bench quote compare weigh mix book knots schema completions man help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__begin)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__bench)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book)
            opts="enquire issue list show mark pay queue log undo start stop took learn summary check export import backup forget"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__backup)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__check)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__enquire)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__export)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__forget)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__import)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__issue)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__learn)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__list)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__log)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__mark)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__pay)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__queue)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__show)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__start)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__stop)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__summary)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__took)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__book__subcmd__undo)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__check)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__compare)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__completions)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__costing)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots)
            opts="list show chart tighten sample hand admit dismiss probe begin check"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__admit)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__begin)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__chart)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__check)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__dismiss)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__hand)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__list)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__probe)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__sample)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__show)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__knots__subcmd__tighten)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__man)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__mix)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__quote)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__schema)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__takeoff)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__help__subcmd__weigh)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots)
            opts="-h --help list show chart tighten sample hand admit dismiss probe begin check help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__admit)
            opts="-h --yes --unguarded --shop --demo --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__begin)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__chart)
            opts="-h --kind --cord --shop --demo --out --replace --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --kind)
                    COMPREPLY=($(compgen -W "sennit row mounting wrap single" -- "${cur}"))
                    return 0
                    ;;
                --cord)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --out)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__check)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__dismiss)
            opts="-h --shop --demo --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__hand)
            opts="-h --shop --demo --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help)
            opts="list show chart tighten sample hand admit dismiss probe begin check help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__admit)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__begin)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__chart)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__check)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__dismiss)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__hand)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__help)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__list)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__probe)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__sample)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__show)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__help__subcmd__tighten)
            opts=""
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 4 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__list)
            opts="-h --kind --shop --demo --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --kind)
                    COMPREPLY=($(compgen -W "sennit row mounting wrap single" -- "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__probe)
            opts="-h --unguarded --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__sample)
            opts="-h --cord --knot --tied --core --rod --working --set --before --after --made --minutes --on --note --only-show --shop --demo --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --cord)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --knot)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --tied)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --core)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --rod)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --working)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --set)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --before)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --after)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --made)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --minutes)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --note)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__show)
            opts="-h --cord --core --rod --working --give --set --shop --demo --as --out --replace --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --cord)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --core)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --rod)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --working)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --give)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --set)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html svg json" -- "${cur}"))
                    return 0
                    ;;
                --out)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__knots__subcmd__tighten)
            opts="-h --every --cord --give --core --rod --working --keep --into --shop --demo --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 3 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --cord)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --give)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --core)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --rod)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --working)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --into)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__man)
            opts="-h --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__mix)
            opts="-h --size --measure --price --what-if --shop --demo --hours --demand --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --price)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --what-if)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --hours)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --demand)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__quote)
            opts="-h --size --measure --confidence --shop --demo --on --as --out --own --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --confidence)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                --out)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --own)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__schema)
            opts="-h --help shop cords fittings design commission knot samples quote-json takeoff-json bench-json costing-json compare-json weigh-json mix-json book-list-json book-show-json book-queue-json book-took-json book-summary-json knot-json tight-json hand-json"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__takeoff)
            opts="-h --size --measure --shop --demo --on --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --on)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
        reeve__subcmd__weigh)
            opts="-h --size --measure --price --what-if --prices --shop --demo --as --help"
            if [[ ${cur} == -* || ${COMP_CWORD} -eq 2 ]] ; then
                COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
                return 0
            fi
            case "${prev}" in
                --size)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --measure)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --price)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --what-if)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --prices)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --shop)
                    COMPREPLY=($(compgen -f "${cur}"))
                    return 0
                    ;;
                --as)
                    COMPREPLY=($(compgen -W "text html csv json" -- "${cur}"))
                    return 0
                    ;;
                *)
                    COMPREPLY=()
                    ;;
            esac
            COMPREPLY=( $(compgen -W "${opts}" -- "${cur}") )
            return 0
            ;;
    esac
}

if [[ "${BASH_VERSINFO[0]}" -eq 4 && "${BASH_VERSINFO[1]}" -ge 4 || "${BASH_VERSINFO[0]}" -gt 4 ]]; then
    complete -F _reeve -o nosort -o bashdefault -o default reeve
else
    complete -F _reeve -o bashdefault -o default reeve
fi
